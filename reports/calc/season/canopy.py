"""How much soil the leaf of a living stand covers."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

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
    days, shares = _knots(stand, reckoning)
    return np.asarray(np.interp(np.arange(start, stop), days, shares))


def _knots(stand: Stand, reckoning: Reckoning) -> tuple[list[int], list[float]]:
    choices = reckoning.assumptions
    closed, fullest = (
        choices["closed_cover"],
        max(choices["fullest_cover"], choices["closed_cover"]),
    )
    up = stand.up or 0
    rise = closed / max(_days_to_close(stand, reckoning), 1)
    days: list[int] = [up]
    shares: list[float] = [0.0]
    marks = {cut: 0.0 for cut in stand.cuts if cut > up} | _seen(stand, reckoning)
    for day, share in sorted(marks.items()):
        _climb(days, shares, rise, fullest, until=day)
        days += [day]
        shares += [share]
    _climb(days, shares, rise, fullest, until=None)
    return days, shares


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


def _days_to_close(stand: Stand, reckoning: Reckoning) -> float:
    first = stand.closures[0] if stand.closures else None
    if first is None or stand.up is None or first.likely <= stand.up:
        return reckoning.assumptions["days_emerged_to_closed"]
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
