"""What people saw in a stand, laid over what was reckoned."""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping
from dataclasses import dataclass

from reports.calc.shapes.basics import How
from reports.calc.shapes.ledger import Observation, PlantingFacts, Seen
from reports.calc.shapes.season import StageDate, StageName

DAY = dt.timedelta(days=1)
NO_DAYS = dt.timedelta(0)
IN_FLOWER = (Seen.FIRST_FLOWER, Seen.BLOOM)


@dataclass(frozen=True, slots=True)
class Reading:
    """What the observations of a stand say about its stages.

    ``on`` is the day a stage was seen to come, ``by`` a day by which it had come
    and ``after`` a day on which it had not.
    """

    on: Mapping[StageName, dt.date]
    by: Mapping[StageName, dt.date]
    after: Mapping[StageName, dt.date]


def read(
    planting: PlantingFacts, start: dt.date, assumptions: Mapping[str, float]
) -> Reading:
    """Return what the observations say, those before the start left out."""
    on: dict[StageName, dt.date] = {}
    by: dict[StageName, dt.date] = {}
    after: dict[StageName, dt.date] = {}
    cut = min((end.on for end in planting.ends if end.regrows), default=dt.date.max)
    for row in sorted(planting.observations, key=_day):
        if row.on < start or row.seen is Seen.FROST_KILLED:
            continue
        for name in _come(row, assumptions, before_cut=row.on <= cut):
            on.setdefault(name, row.on)
        if row.bloom_share or (row.bloom_share is None and row.seen in IN_FLOWER):
            by.setdefault(StageName.FIRST_FLOWER, row.on)
        if row.canopy_share or row.ground_cover_share:
            by.setdefault(StageName.EMERGED, row.on)
        if row.canopy_share is not None and row.on <= cut:
            after[StageName.CLOSED] = row.on
        if row.bloom_share == 0:
            after[StageName.FIRST_FLOWER] = row.on
    return Reading(on, by, after)


def lay_over(rows: tuple[StageDate, ...], reading: Reading) -> tuple[StageDate, ...]:
    """Return the stages with what was seen put in and the forecasts bounded by it.

    Canopy closure stands by itself: a thin stand flowers before it ever closes.
    """
    return _not_too_late(_not_too_early(_put_in(rows, reading), reading), reading)


def _come(
    row: Observation, assumptions: Mapping[str, float], *, before_cut: bool
) -> list[StageName]:
    come = []
    if row.seen is Seen.EMERGED:
        come.append(StageName.EMERGED)
    if before_cut and (row.canopy_share or 0.0) >= assumptions["closed_cover"]:
        come.append(StageName.CLOSED)
    if row.seen is Seen.FIRST_FLOWER:
        come.append(StageName.FIRST_FLOWER)
    if (row.bloom_share or 0.0) >= assumptions["full_bloom_share"]:
        come.append(StageName.FULL_BLOOM)
    if row.seen is Seen.SEED_SET:
        come.append(StageName.FIRST_SEED)
    return come


def _put_in(rows: tuple[StageDate, ...], reading: Reading) -> list[StageDate]:
    out, late_by = [], NO_DAYS
    for row in rows:
        seen = reading.on.get(row.name)
        if seen is None:
            out.append(_moved(row, late_by))
            continue
        if row.on is not None and row.name is not StageName.CLOSED:
            late_by = seen - row.on
        out.append(StageDate(row.name, seen, How.OBSERVED, seen, seen))
    return out


def _not_too_early(rows: list[StageDate], reading: Reading) -> list[StageDate]:
    out, floor = [], dt.date.min
    for row in rows:
        if row.name in reading.on:
            out.append(row)
            if row.on is not None and row.name is not StageName.CLOSED:
                floor = row.on
            continue
        not_yet = reading.after.get(row.name)
        out.append(_not_before(row, max(floor, not_yet + DAY) if not_yet else floor))
    return out


def _not_too_late(rows: list[StageDate], reading: Reading) -> tuple[StageDate, ...]:
    out, ceiling = [], dt.date.max
    for row in reversed(rows):
        closing = row.name is StageName.CLOSED
        seen = reading.on.get(row.name) or reading.by.get(row.name)
        if seen is not None:
            ceiling = min(ceiling, seen)
        kept = row.name in reading.on or closing
        out.append(row if kept else _not_after(row, ceiling))
    return tuple(reversed(out))


def _moved(row: StageDate, by: dt.timedelta) -> StageDate:
    if not by or row.on is None:
        return row
    return _with(
        row, row.on + by, (row.early or row.on) + by, (row.late or row.on) + by
    )


def _not_before(row: StageDate, day: dt.date) -> StageDate:
    if row.on is None or (row.early or row.on) >= day:
        return row
    late = max(row.late or row.on, day)
    return _with(row, max(row.on, day), max(row.early or row.on, day), late)


def _not_after(row: StageDate, day: dt.date) -> StageDate:
    if day == dt.date.max:
        return row
    if row.on is None:
        # What flowers has come up, so the last day it can have done so is known.
        up = row.name is StageName.EMERGED
        return StageDate(row.name, day, How.OBSERVED, None, day) if up else row
    early, late = min(row.early or row.on, day), min(row.late or row.on, day)
    return _with(row, min(row.on, day), early, late)


def _with(row: StageDate, on: dt.date, early: dt.date, late: dt.date) -> StageDate:
    return StageDate(row.name, on, row.how, early, late, row.source, row.unverified)


def _day(row: Observation) -> dt.date:
    return row.on
