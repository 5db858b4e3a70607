"""The week sheet for the shed door: what is to be done, field by field."""

from __future__ import annotations

import datetime as dt
from typing import Any

from farm.models import Farm
from reports.calc.season.ahead.now import now_of
from reports.ledger.ahead import open_duties
from reports.papers.ahead import ahead_of
from reports.papers.dues import due_rows
from reports.papers.now import WEEK, field_parts, state_parts


def week_paper(farm: Farm, *, on: dt.date, today: dt.date) -> dict[str, Any]:
    """Everything the week sheet prints."""
    ahead = ahead_of(farm, on)
    now = now_of(ahead.fields, ahead.outlooks, ahead.growing)
    waiting = open_duties(farm, on=on)
    rows = tuple(due_rows(now.due, waiting, on=on))
    # A duty made of a window stands in the window's line, not in one of its own.
    inside = {row.duty.id for row in rows if row.duty}
    soon = (row for row in waiting if row.earliest_on <= on + WEEK)
    duties = tuple(row for row in soon if row.id not in inside)
    return {
        "farm": farm,
        "printed_on": today,
        "on": on,
        "until": on + WEEK,
        "now": now,
        "duties": duties,
        "states": tuple(state_parts(rows)),
        "fields": tuple(field_parts(now, rows, duties)),
    }
