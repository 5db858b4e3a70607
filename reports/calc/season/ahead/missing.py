"""Records that ought to be there: sown but never seen up, ended without a reason."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator, Mapping

from reports.calc.season.ahead.holding import ended_on, is_stale
from reports.calc.shapes.ahead import Outlook
from reports.calc.shapes.ledger import FieldLedger, PlantingFacts, Purpose
from reports.calc.shapes.now import Lack, Missing
from reports.calc.shapes.season import StageName

UP_GRACE_D = 7  # d, after the last day it should be up, [ASSUMED]
TOLD_FOR_D = 60  # d, so long an end without its reason is asked about, [ASSUMED]
Found = tuple[Missing, dt.date]


def lacks_of(
    field: FieldLedger,
    row: PlantingFacts,
    outlooks: Mapping[int, Outlook],
    today: dt.date,
) -> Iterator[Lack]:
    """Yield every record missing about a planting."""
    for missing, since in _missing(row, outlooks.get(row.id), today):
        if since <= today:
            yield Lack(field.id, field.name, row, missing, since)
    for end in row.ends:
        recent = 0 <= (today - end.on).days <= TOLD_FOR_D
        if recent and not end.regrows and not end.reason and _is_cover(row):
            yield Lack(field.id, field.name, row, Missing.NO_REASON, end.on, end.id)


def _missing(
    row: PlantingFacts, outlook: Outlook | None, today: dt.date
) -> Iterator[Found]:
    if row.sown_on is None:
        if row.planned_on is not None and not is_stale(row, today):
            yield Missing.PLANNED_NOT_SOWN, row.planned_on + dt.timedelta(1)
        return
    if outlook is None or ended_on(row) is not None or not _is_cover(row):
        return
    up = outlook.stage(StageName.EMERGED)
    if not row.observations and up.late is not None:
        yield Missing.NEVER_SEEN_UP, up.late + dt.timedelta(UP_GRACE_D)
    seed = outlook.stage(StageName.VIABLE_SEED)
    if seed.on is not None:
        yield Missing.PAST_SEED, seed.on


def _is_cover(row: PlantingFacts) -> bool:
    return row.purpose is not Purpose.CASH
