"""Room for a sowing: the days it has, and the run of days good for it."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from reports.calc import forecast
from reports.calc.season.ahead.chances import Chances
from reports.calc.season.ahead.missing import UP_GRACE_D

Days = NDArray[np.float64]
Places = NDArray[np.int64]


@dataclass(frozen=True, slots=True)
class Room:
    """What the days of a gap give a kind.

    ``first`` and ``last`` are places among the days, None where no day is good;
    ``time`` and ``warm`` whether there is time and warmth as far as anything is known.
    """

    limit: Days
    cover: Days
    first: int | None
    last: int | None
    time: bool
    warm: bool

    @property
    def place(self) -> int:
        """Return the place of the day told of: the first good one, or the first."""
        return self.first or 0


def room_for(
    chances: Chances,
    warm: Days,
    days: Places,
    *,
    end_by: dt.date | None,
    wanted: float,
) -> Room:
    """Return the days on which a sowing covers in time and the soil is warm."""
    limit = _limit(chances, days, end_by)
    known = ~np.isnan(limit) & ~np.isnan(chances.cover[days])
    cover = forecast.share_of_years(chances.cover[days] < limit, known)
    good = np.nan_to_num(cover) >= wanted
    is_warm = good & (np.nan_to_num(warm[days]) >= wanted)
    at = np.flatnonzero(is_warm)
    unknown = len(days) > 0 and bool(np.isnan(cover).all())
    return Room(
        limit=limit,
        cover=cover,
        first=int(at[0]) if len(at) else None,
        last=_run_end(at) if len(at) else None,
        time=bool(good.any() or unknown),
        warm=bool(is_warm.any() or unknown),
    )


def _limit(chances: Chances, days: Places, end_by: dt.date | None) -> Days:
    """Return the days a stand has until frost or until it must be ended. (d, y)"""
    frost = chances.frost[days]
    if end_by is None:
        return frost
    left = (end_by - chances.first).days - days
    return np.asarray(np.minimum(frost, left[:, None]))


def look_on(chances: Chances, days: Places, place: int | None) -> dt.date | None:
    """Return a day by which the stand ought to be up."""
    if place is None:
        return None
    up = float(np.nan_to_num(chances.up[days[place]]).max(initial=0.0))
    sown = chances.first + dt.timedelta(int(days[place]))
    return sown + dt.timedelta(int(up) + UP_GRACE_D)


def _run_end(at: Places) -> int:
    breaks = np.flatnonzero(np.diff(at) > 1)
    return int(at[breaks[0]]) if len(breaks) else int(at[-1])


def day_at(chances: Chances, days: Places, place: int | None) -> dt.date | None:
    """Return the day at a place among the days of a gap."""
    return None if place is None else chances.first + dt.timedelta(int(days[place]))


def share_at(shares: Days, place: int) -> float | None:
    """Return a share at a place, None where it is not known."""
    return None if not len(shares) or np.isnan(shares[place]) else float(shares[place])
