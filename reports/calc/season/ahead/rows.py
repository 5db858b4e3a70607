"""One stage of one stand, told: as seen, by heat, or by days."""

from __future__ import annotations

import datetime as dt
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from reports.calc.growth import StageDays, up_on_its_date
from reports.calc.season.ahead.growing import CLOSED, NAMES, Growing, Sowing
from reports.calc.shapes.ahead import SpreadOf, StageOdds
from reports.calc.shapes.basics import How
from reports.calc.shapes.ledger import PlantingFacts

Days = NDArray[np.float64]


@dataclass(slots=True)
class Known:
    """What goes into the rows of one stand."""

    planting: PlantingFacts
    sowings: Sequence[Sowing]
    flat: Days
    seen: Days
    days: Days
    growing: Growing


def moved_days(known: Known) -> int:
    """Return how many days flowering came later than the figures say. [d]"""
    out = 0
    for at in range(len(NAMES)):
        flat = known.flat[:, at]
        if at != CLOSED and not np.isnan(known.seen[at]) and not np.isnan(flat).all():
            out = int(known.seen[at] - np.nanmin(flat))
    return out


def row_of(known: Known, at: int, spread: Days, years: int) -> StageOdds:
    """Return one stage by its place among them; ``spread`` by chance. [d]"""
    name, start = NAMES[at], known.planting.start
    assert start is not None
    if not np.isnan(known.seen[at]):
        on = start + dt.timedelta(int(known.seen[at]))
        return StageOdds(name, on, on, on, How.OBSERVED, SpreadOf.SEEN)
    if at == 0 and up_on_its_date(known.planting):
        return StageOdds(name, start, start, start, How.OBSERVED, SpreadOf.SEEN)
    by_heat = _by_heat(known, at, spread, years)
    if by_heat is not None:
        return by_heat
    return _by_days(known, at)


def _by_heat(known: Known, at: int, spread: Days, years: int) -> StageOdds | None:
    """Return the row where heat sets the day in at least one year of ten."""
    if at != CLOSED or not np.isfinite(spread).all():
        return None
    start = known.planting.start
    assert start is not None
    tables = [known.growing.table(one.kind, start) for one in known.sowings]
    rules = [table.heat for table in tables if table.heat is not None]
    flat = known.flat[:, at]
    day = np.inf if np.isnan(flat).all() else float(np.nanmin(flat))
    if not rules or spread[0] >= day:
        return None
    early, on, late = (start + dt.timedelta(int(np.ceil(one))) for one in spread)
    rule = rules[0]
    return StageOdds(
        NAMES[at],
        on,
        early,
        late,
        How.HEAT,
        SpreadOf.YEARS,
        years,
        rule.source,
        rule.unverified,
    )


def _by_days(known: Known, at: int) -> StageOdds:
    """Return the row by days: the first kind's day, with the range in print."""
    name, start = NAMES[at], known.planting.start
    assert start is not None
    told: list[tuple[float, StageDays]] = []
    for sowing, flat in zip(known.sowings, known.flat[:, at], strict=True):
        days = known.growing.table(sowing.kind, start).stages.get(name)
        if days is not None and not np.isnan(flat):
            told.append((float(flat), days))
    if not told:
        return StageOdds(name, None, None, None, How.UNKNOWN, SpreadOf.NONE)
    flat, days = min(told, key=lambda one: one[0])
    # What was seen before it moves its day and its range alike.
    lives = known.days[:, at][~np.isnan(known.days[:, at])]
    moved = int(np.median(lives)) - int(flat) if len(lives) and at != CLOSED else 0

    def on(count: float) -> dt.date:
        return start + dt.timedelta(int(count) + moved)

    return StageOdds(
        name,
        on(flat),
        on(min(days.early, flat)),
        on(max(days.late, flat)),
        days.how,
        SpreadOf.FIGURES,
        0,
        days.source,
        days.unverified,
    )
