"""What every year on record would have made of a sowing, day by day."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from reports.calc import forecast
from reports.calc.season.ahead.growing import CLOSED, NAMES, Growing, Sowing
from reports.calc.season.ahead.kills import kill_figure
from reports.calc.season.ahead.outlook import station_caveats
from reports.calc.shapes.ahead import Caveat
from reports.calc.shapes.basics import How
from reports.calc.shapes.ledger import Figure, KindFacts, Method
from reports.calc.shapes.season import StageName

YEAR_D = 365  # d, how far ahead sowings are looked at, [ASSUMED]
BLOOMS = (StageName.FULL_BLOOM, StageName.FIRST_FLOWER)
Days = NDArray[np.float64]


@dataclass(slots=True)
class Chances:
    """By day of sowing and year: days to cover, to flower, and to killing frost.

    Arrays of shape (d, y). [d] ``bloom`` is all NaN where no figure tells of it.
    """

    first: dt.date
    up: Days
    cover: Days
    flower: Days
    bloom: Days
    frost: Days
    caveats: tuple[Caveat, ...]
    sources: tuple[str, ...]
    how: How

    def share(self, reached: Days) -> Days:
        """Return the share of years that come so far before frost, by day. [0–1]"""
        known = ~np.isnan(reached) & ~np.isnan(self.frost)
        return forecast.share_of_years(reached < self.frost, known)


def chances_of(
    kind: KindFacts, growing: Growing, *, first: dt.date, days: int = YEAR_D
) -> Chances:
    """Return what every year on record would have made of sowings on many days."""
    starts = [first + dt.timedelta(day) for day in range(days)]
    sowings = [Sowing(kind, start, Method.BROADCAST) for start in starts]
    told = growing.by_year(sowings)
    caveats = list(station_caveats(growing))
    cover = told[:, :, CLOSED]
    if np.isnan(growing.by_days(sowings[:1])[0, CLOSED]) and np.isnan(cover).all():
        cover = told[:, :, 0] + growing.assumptions["days_emerged_to_closed"]
        caveats.append(Caveat.CLOSURE_ASSUMED)
    figure = kill_figure([kind])
    if figure is None:
        caveats.append(Caveat.KILL_ASSUMED)
    up = told[:, :, 0]
    after = [
        start + dt.timedelta(0 if np.isnan(days) else int(days))
        for start, days in zip(starts, up[:, 0], strict=True)
    ]
    frost = _days_left(after, figure, growing)
    if not frost.shape[1]:
        frost = np.full(up.shape, np.nan)
    table = growing.table(kind, first)
    by_heat = table.heat is not None and not np.isnan(cover).all()
    return Chances(
        first=first,
        up=up,
        cover=cover,
        flower=told[:, :, NAMES.index(StageName.FIRST_FLOWER)],
        bloom=_bloom(told),
        frost=up + frost,
        caveats=tuple(caveats),
        sources=_sources(kind, figure),
        how=How.HEAT if by_heat else How.DAYS,
    )


def _days_left(after: list[dt.date], figure: Figure | None, growing: Growing) -> Days:
    """Return the days from coming up to the frost that kills, or to lasting cold."""
    if figure is None:
        stops_c = growing.assumptions["growth_stops_c"]
        return growing.sky.days_to_cold(after, mean_c=stops_c)
    return growing.sky.days_to_frost(after, temp_c=figure.between.middle)


def _bloom(told: Days) -> Days:
    full, first = (told[:, :, NAMES.index(name)] for name in BLOOMS)
    return first if np.isnan(full).all() else full


def _sources(kind: KindFacts, figure: Figure | None) -> tuple[str, ...]:
    rows = [kind.best("full_bloom_days") or kind.best("first_flower_days"), figure]
    return tuple(row.source for row in rows if row is not None)
