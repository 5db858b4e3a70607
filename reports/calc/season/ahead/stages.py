"""The stages of many stands: the middle of the years, with what was seen."""

from __future__ import annotations

import datetime as dt
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from reports.calc import forecast
from reports.calc.growth import up_on_its_date
from reports.calc.growth.seen import read
from reports.calc.season.ahead.growing import NAMES, Growing, Sowing
from reports.calc.season.ahead.rows import Known, moved_days, row_of
from reports.calc.shapes.ahead import StageOdds
from reports.calc.shapes.ledger import PlantingFacts
from reports.calc.shapes.season import StageName

Days = NDArray[np.float64]


@dataclass(slots=True)
class Stood:
    """One stand's stages: days since its start by year (y, s), and the told rows."""

    planting: PlantingFacts
    start: dt.date
    days: Days
    moved_days: int
    rows: tuple[StageOdds, ...]

    def row(self, name: StageName) -> StageOdds:
        """Return one stage."""
        return self.rows[NAMES.index(name)]

    def years(self, name: StageName) -> Days:
        """Return the days since its start of one stage in every year."""
        return self.days[:, NAMES.index(name)]


def stages_of(
    plantings: Sequence[PlantingFacts], growing: Growing
) -> tuple[Stood, ...]:
    """Return the stages of every planting with a start and a kind."""
    told = [row for row in plantings if row.start is not None and row.lines]
    if not told:
        return ()
    sowings: list[Sowing] = []
    begins: list[int] = []
    for row in told:
        begins.append(len(sowings))
        sowings += _sowings(row)
    by_line = growing.by_year(sowings)
    flat = growing.by_days(sowings)
    # In a mix the first kind to come to a stage gives its date.
    first = np.fmin.reduceat(by_line, begins, axis=0)
    seen = np.stack([_seen(row, growing) for row in told])
    days = forecast.lay_seen(first, seen=seen)
    spread = forecast.days_by_chance(np.swapaxes(days, 1, 2))
    years = forecast.years_known(np.swapaxes(first, 1, 2))
    ends = [*begins[1:], len(sowings)]
    out = []
    for place, row in enumerate(told):
        lines = slice(begins[place], ends[place])
        known = Known(
            row, sowings[lines], flat[lines], seen[place], days[place], growing
        )
        rows = tuple(
            row_of(known, at, spread[place, at], int(years[place, at]))
            for at in range(len(NAMES))
        )
        assert row.start is not None
        out.append(Stood(row, row.start, days[place], moved_days(known), rows))
    return tuple(out)


def _sowings(planting: PlantingFacts) -> list[Sowing]:
    start, up = planting.start, up_on_its_date(planting)
    assert start is not None
    return [
        Sowing(line.kind, start, planting.method, up or planting.method == "self_sown")
        for line in planting.lines
    ]


def _seen(planting: PlantingFacts, growing: Growing) -> Days:
    out = np.full(len(NAMES), np.nan)
    if planting.start is None or not planting.observations:
        return out
    found = read(planting, planting.start, growing.assumptions)
    for name, on in found.on.items():
        out[NAMES.index(name)] = (on - planting.start).days
    return out
