"""The page the farm opens in the morning, and the week sheet for the shed door."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Any

from farm.models import Farm, User
from reports.calc.season.ahead.now import now_of
from reports.calc.season.ahead.outlook import station_caveats
from reports.calc.shapes.ahead import WindowState
from reports.calc.shapes.now import Lack, Now
from reports.ledger.ahead import DutyTold, open_duties
from reports.papers.ahead import ahead_of, station_told
from reports.papers.dues import DueRow, due_rows, people_on

WEEK = dt.timedelta(days=6)


@dataclass(frozen=True)
class StatePart:
    """Windows in one state."""

    state: WindowState
    due: tuple[DueRow, ...]


@dataclass(frozen=True)
class FieldNow:
    """What one field asks for."""

    id: int
    name: str
    due: tuple[DueRow, ...]
    lacks: tuple[Lack, ...]
    duties: tuple[DutyTold, ...]


def now_paper(
    farm: Farm, *, on: dt.date, today: dt.date, me: User, by_field: bool = False
) -> dict[str, Any]:
    """Everything the Now page shows; ``on`` is the day one looks from."""
    ahead = ahead_of(farm, on)
    now = now_of(ahead.fields, ahead.outlooks, ahead.growing)
    waiting = open_duties(farm, on=on, me=me)
    duties = tuple(row for row in waiting if row.earliest_on <= on + WEEK)
    rows = tuple(due_rows(now.due, waiting, on=on))
    return {
        "farm": farm,
        "today": today,
        "on": on,
        "now": now,
        # Those that are late stand above, once.
        "duties": [row for row in duties if row.latest_on >= on],
        "late": [row for row in duties if row.latest_on < on],
        "later": len(waiting) - len(duties),
        "states": tuple(state_parts(rows)),
        "fields": tuple(field_parts(now, rows, duties)) if by_field else (),
        "by_field": by_field,
        "people": people_on(farm, today),
        "station": station_told(ahead.growing),
        "caveats": tuple(station_caveats(ahead.growing)),
    }


def state_parts(rows: Sequence[DueRow]) -> Iterator[StatePart]:
    """Windows by state, the pressing ones first; a state without any is left out."""
    for state in dict.fromkeys(row.due.state for row in rows):
        yield StatePart(state, tuple(row for row in rows if row.due.state is state))


def field_parts(
    now: Now, rows: Sequence[DueRow], duties: Sequence[DutyTold]
) -> Iterator[FieldNow]:
    """Every field that asks for something, by name."""
    names = {row.field_id: row.field_name for row in now.due}
    names |= {row.field_id: row.field_name for row in now.lacks}
    names |= {row.field_id: row.field_name for row in duties}
    for pk, name in sorted(names.items(), key=lambda one: (one[1], one[0])):
        yield FieldNow(
            pk,
            name,
            tuple(row for row in rows if row.due.field_id == pk),
            tuple(row for row in now.lacks if row.field_id == pk),
            tuple(row for row in duties if row.field_id == pk),
        )
