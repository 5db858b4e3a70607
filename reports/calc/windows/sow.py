"""When to sow: the days with the wanted chance, found in a year of days."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray

from reports.calc.shapes.ahead import Why


@dataclass(frozen=True, slots=True)
class SowDays:
    """The first run of days good for sowing, and what bounds it.

    ``chances`` are those of the first and of the last day. [0–1]
    """

    opens: dt.date
    closes: dt.date | None
    opens_why: Why
    closes_why: Why
    chances: tuple[float, float]


def sow_days(
    *,
    first: dt.date,
    grows: ArrayLike,
    warm: ArrayLike,
    wanted: float,
    covers: bool = False,
) -> SowDays | None:
    """Return the next run of days on which a sowing has the wanted chance.

    Parameters
    ----------
    first : datetime.date
        The first day looked at.
    grows : array_like, shape (d,)
        By day of sowing, the share of years in which the stand comes to bloom before
        frost kills it. [0–1] NaN where the years tell nothing.
    warm : array_like, shape (d,)
        Share of years with soil warm enough on that day. [0–1]
    wanted : float
        Least chance of both. [0–1]
    covers : bool
        Whether ``grows`` is the chance to close the canopy instead of to bloom.

    Returns
    -------
    SowDays or None
        None where no day has the chance. ``closes`` is None where the run goes on to
        the last day looked at.

    Raises
    ------
    ValueError
        If the two series differ in length or the chance is outside 0 to 1.

    Notes
    -----
    A day is good where both shares meet the chance. It opens with today, with the
    soil or with the last frost of spring, whichever held the day before back
    ([CALC]_).

    Examples
    --------
    >>> found = sow_days(
    ...     first=dt.date(2026, 5, 1), grows=[0.1, 0.9, 0.9, 0.2], warm=[1.0] * 4,
    ...     wanted=0.8,
    ... )
    >>> found.opens.day, found.closes.day, found.closes_why.value
    (2, 3, 'frost_before_bloom')
    """
    chance, heat = (np.asarray(row, dtype=np.float64) for row in (grows, warm))
    if chance.shape != heat.shape or not 0 <= wanted <= 1:
        raise ValueError("series of different length, or chance outside 0 to 1")
    good = (np.nan_to_num(chance) >= wanted) & (np.nan_to_num(heat) >= wanted)
    if not good.any():
        return None
    start = int(np.argmax(good))
    after = np.flatnonzero(~good[start:])
    stop = start + int(after[0]) if len(after) else len(good)
    frost = Why.FROST_BEFORE_COVER if covers else Why.FROST_BEFORE_BLOOM
    ends = len(after) > 0
    return SowDays(
        opens=first + dt.timedelta(start),
        closes=first + dt.timedelta(stop - 1) if ends else None,
        opens_why=_opens(start, heat, wanted),
        closes_why=_closes(stop, chance, wanted, frost) if ends else _no_end(),
        chances=(float(chance[start]), float(chance[stop - 1])),
    )


def _opens(start: int, warm: NDArray[np.float64], wanted: float) -> Why:
    if start == 0:
        return Why.TODAY
    return Why.SOIL_COLD if warm[start - 1] < wanted else Why.SPRING_FROST


def _closes(stop: int, chance: NDArray[np.float64], wanted: float, frost: Why) -> Why:
    return frost if not chance[stop] >= wanted else Why.SOIL_COLD


def _no_end() -> Why:
    return Why.NO_END_IN_A_YEAR
