"""How much soil the leaf of a living stand covers."""

from __future__ import annotations

from collections.abc import Mapping

import numpy as np
from numpy.typing import NDArray

from reports.calc.growth import whole_days
from reports.calc.season.reckoning import Reckoning
from reports.calc.season.stands import Stand


def canopy_cover(
    stand: Stand, start: int, stop: int, reckoning: Reckoning
) -> NDArray[np.float64]:
    """Return the share of soil a living stand covers, from ``start`` to ``stop``.

    Days are positions in the calendar. Cover rises in a straight line from nothing
    at emergence to 80 % at closure and on to its fullest; where closure is not known
    it is taken to come some weeks after emergence, for this purpose only. What was
    seen replaces the line from that day on, and a cut starts it again.
    """
    up = stand.up or 0
    marks = {cut: 0.0 for cut in stand.cuts if cut > up} | _seen(stand, reckoning)
    if not marks:
        return _rise(stand, reckoning)[start - up : stop - up]
    days, shares = _knots(stand, marks, reckoning)
    return np.asarray(np.interp(np.arange(start, stop), days, shares))


def _rise(stand: Stand, reckoning: Reckoning) -> NDArray[np.float64]:
    """Return cover by day since emergence, one line for stands that close alike."""
    to_close = _days_to_close(stand, reckoning)
    if to_close not in reckoning.rises:
        since = np.arange(reckoning.station.days)
        rise = reckoning.assumptions["closed_cover"] / to_close
        reckoning.rises[to_close] = np.minimum(since * rise, _fullest(reckoning))
    return reckoning.rises[to_close]


def _knots(
    stand: Stand, marks: Mapping[int, float], reckoning: Reckoning
) -> tuple[list[int], list[float]]:
    fullest = _fullest(reckoning)
    rise = reckoning.assumptions["closed_cover"] / _days_to_close(stand, reckoning)
    days: list[int] = [stand.up or 0]
    shares: list[float] = [0.0]
    for day, share in sorted(marks.items()):
        _climb(days, shares, rise, fullest, until=day)
        days += [day]
        shares += [share]
    _climb(days, shares, rise, fullest, until=None)
    return days, shares


def _fullest(reckoning: Reckoning) -> float:
    choices = reckoning.assumptions
    return max(choices["fullest_cover"], choices["closed_cover"])


def _climb(
    days: list[int],
    shares: list[float],
    rise: float,
    fullest: float,
    *,
    until: int | None,
) -> None:
    """Let cover rise from the last knot to its fullest, or to the day before."""
    day, share = days[-1], shares[-1]
    top = day + int(np.ceil(max(fullest - share, 0.0) / rise))
    if until is not None and top >= until:
        top = until - 1
    if top > day:
        days.append(top)
        shares.append(min(share + rise * (top - day), max(fullest, share)))


def _days_to_close(stand: Stand, reckoning: Reckoning) -> int:
    first = stand.closures[0] if stand.closures else None
    if first is None or stand.up is None or first.likely <= stand.up:
        return max(whole_days(reckoning.assumptions["days_emerged_to_closed"]), 1)
    return first.likely - stand.up


def _seen(stand: Stand, reckoning: Reckoning) -> dict[int, float]:
    out = {}
    for row in stand.planting.observations:
        share = row.canopy_share
        share = row.ground_cover_share if share is None else share
        day = reckoning.station.index(row.on)
        if share is not None and (stand.up or 0) < day < stand.gone:
            out[day] = min(max(share, 0.0), 1.0)
    return out
