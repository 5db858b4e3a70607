"""The page the farm opens in the morning, and the week sheet for the shed door."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Any

from farm.models import Farm, User
from reports.calc.season.ahead.now import now_of
from reports.calc.shapes.ahead import WindowState
from reports.calc.shapes.now import Due, Lack, Now
from reports.ledger.ahead import DutyTold, open_duties
from reports.papers.ahead import ahead_of

WEEK = dt.timedelta(days=6)


@dataclass(frozen=True)
class StatePart:
    """Windows in one state."""

    state: WindowState
    due: tuple[Due, ...]


@dataclass(frozen=True)
class FieldNow:
    """What one field asks for."""

    id: int
    name: str
    due: tuple[Due, ...]
    lacks: tuple[Lack, ...]
    duties: tuple[DutyTold, ...]


def now_paper(
    farm: Farm, *, on: dt.date, today: dt.date, me: User, by_field: bool = False
) -> dict[str, Any]:
    """Everything the Now page shows; ``on`` is the day one looks from."""
    ahead = ahead_of(farm, on)
    now = now_of(ahead.fields, ahead.outlooks, ahead.growing)
    duties = open_duties(farm, until=on + WEEK, me=me)
    return {
        "farm": farm,
        "today": today,
        "on": on,
        "now": now,
        "duties": duties,
        "late": [row for row in duties if row.latest_on < on],
        "states": tuple(state_parts(now)),
        "fields": tuple(field_parts(now, duties)) if by_field else (),
        "by_field": by_field,
    }


def state_parts(now: Now) -> Iterator[StatePart]:
    """Windows by state, the pressing ones first; a state without any is left out."""
    for state in dict.fromkeys(row.state for row in now.due):
        yield StatePart(state, tuple(row for row in now.due if row.state is state))


def field_parts(now: Now, duties: Sequence[DutyTold]) -> Iterator[FieldNow]:
    """Every field that asks for something, by name."""
    names = {row.field_id: row.field_name for row in now.due}
    names |= {row.field_id: row.field_name for row in now.lacks}
    names |= {row.field_id: row.field_name for row in duties}
    for pk, name in sorted(names.items(), key=lambda one: (one[1], one[0])):
        yield FieldNow(
            pk,
            name,
            tuple(row for row in now.due if row.field_id == pk),
            tuple(row for row in now.lacks if row.field_id == pk),
            tuple(row for row in duties if row.field_id == pk),
        )
