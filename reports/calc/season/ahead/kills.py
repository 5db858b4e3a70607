"""The frost that kills a stand, over the years on record."""

from __future__ import annotations

import datetime as dt
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from reports.calc import forecast
from reports.calc.season.ahead.growing import Growing
from reports.calc.season.ahead.stages import Stood
from reports.calc.shapes.ahead import KillOdds
from reports.calc.shapes.ledger import Figure, KindFacts
from reports.calc.shapes.season import StageName

Days = NDArray[np.float64]
CHANCES = forecast.CHANCES


@dataclass(frozen=True, slots=True)
class Killed:
    """Days from a stand's start to the frost that kills it in each year. (y,)"""

    days: Days
    temp_c: float
    source: str
    read_on: dt.date | None = None


def kill_figure(kinds: Sequence[KindFacts]) -> Figure | None:
    """Return the figure of the tenderest kind, None where no figure says."""
    rows = [row for kind in kinds if (row := kind.best("kill_temp")) is not None]
    return max(rows, key=lambda row: row.between.middle, default=None)


def kills_of(stands: Sequence[Stood], growing: Growing) -> tuple[Killed | None, ...]:
    """Return when frost kills each stand, those of one temperature in one sweep."""
    out: list[Killed | None] = [None] * len(stands)
    alike: dict[float, list[int]] = {}
    figures = [kill_figure([line.kind for line in s.planting.lines]) for s in stands]
    for place, figure in enumerate(figures):
        if figure is not None:
            alike.setdefault(figure.between.middle, []).append(place)
    for temp_c, places in alike.items():
        turns = [_from(stands[one], growing) for one in places]
        ahead = growing.sky.days_to_frost(turns, temp_c=temp_c)
        for turn, place, row in zip(turns, places, ahead, strict=True):
            figure, stand = figures[place], stands[place]
            assert figure is not None
            out[place] = _killed(stand, turn, row, figure, growing)
    return tuple(out)


def _from(stand: Stood, growing: Growing) -> dt.date:
    up = stand.row(StageName.EMERGED).on or stand.start
    return max(up, growing.sky.unread_from)


def _killed(
    stand: Stood, turn: dt.date, ahead: Days, figure: Figure, growing: Growing
) -> Killed:
    temp_c = figure.between.middle
    up = stand.row(StageName.EMERGED).on or stand.start
    read = None
    if up < turn:
        last = turn - dt.timedelta(days=1)
        read = growing.sky.frost_read(up, last, temp_c=temp_c)
    if read is not None:
        days = np.full(ahead.shape, float((read - stand.start).days))
    else:
        days = (turn - stand.start).days + ahead
    return Killed(days, temp_c, figure.source, read)


def kill_odds(stand: Stood, killed: Killed) -> KillOdds:
    """Return the dates and odds of a stand's killing frost."""
    known = ~np.isnan(killed.days)
    chance = forecast.share_of_years(np.isfinite(killed.days), known)
    early, likely, late = (
        _date(stand.start, days)
        for days in forecast.days_by_chance(killed.days, CHANCES)
    )
    seed = stand.years(StageName.VIABLE_SEED)
    both = known & ~np.isnan(seed) if len(seed) == len(known) else known & False
    first = forecast.share_of_years(seed <= killed.days, both) if both.any() else None
    return KillOdds(
        temp_c=killed.temp_c,
        early=early,
        likely=likely,
        late=late,
        chance=_number(chance),
        seed_first=_number(first),
        years=int(np.count_nonzero(known)),
        source=killed.source,
    )


def _date(start: dt.date, days: float) -> dt.date | None:
    return start + dt.timedelta(int(days)) if np.isfinite(days) else None


def _number(share: Days | None) -> float | None:
    return None if share is None or np.isnan(share) else float(share)
