"""Spells looked up in every year at once: until a heat sum, until an event."""

from __future__ import annotations

import numpy as np
from numpy.typing import ArrayLike, NDArray

from reports.calc.forecast.years import GAP_SHARE, Aligned

ROUNDING = 1e-9  # last bit of a running total, [CALC]
HORIZON_D = 365  # d, how far ahead an event is looked for, [ASSUMED]
NEVER = np.inf
UNKNOWN = np.nan


def running(daily: ArrayLike) -> NDArray[np.float64]:
    """Return the sum before each day, the first being 0; gaps add nothing.

    Parameters
    ----------
    daily : array_like, shape (n,)
        One figure a day, 0 or more. NaN where not read.

    Returns
    -------
    NDArray, shape (n + 1,)
        Running total in the same unit.

    Notes
    -----
    Plain addition ([CALC]_).

    Examples
    --------
    >>> running([1.0, float("nan"), 2.0])
    array([0., 1., 1., 3.])
    """
    days = np.nan_to_num(np.asarray(daily, dtype=np.float64))
    return np.concatenate(([0.0], np.cumsum(days)))


def days_to_heat(
    *, total: ArrayLike, missing: ArrayLike, aligned: Aligned, wanted: ArrayLike
) -> NDArray[np.float64]:
    """Return after how many days of each year a heat sum is met. [d]

    Parameters
    ----------
    total : array_like, shape (n + 1,)
        Running total of degree days. [°C-day]
    missing : array_like, shape (n + 1,)
        Running count of days without a reading. [d]
    aligned : Aligned
        From which day on, for f stands and y years.
    wanted : array_like, shape (f,)
        Heat still wanted from that day on. [°C-day] 0 or more.

    Returns
    -------
    NDArray, shape (f, y)
        0 if the day's own warmth is enough. NaN in the stand's own year, where the
        record begins later or ends before, or where more than a tenth of the spell
        was not read.

    Raises
    ------
    ValueError
        If heat wanted is below 0.

    Notes
    -----
    Least d with ``total[at + d + 1] - total[at] >= wanted``: the sum the whole year
    through, found by halving ([CALC]_).

    Examples
    --------
    >>> import datetime as dt
    >>> from reports.calc.forecast.years import align
    >>> there = align(
    ...     first_day=dt.date(2020, 1, 1), days=366, on=[dt.date(2021, 1, 1)]
    ... )
    >>> days_to_heat(
    ...     total=np.arange(367.0), missing=np.zeros(367), aligned=there, wanted=[9.0]
    ... )
    array([[8.]])
    """
    sums, gaps = np.asarray(total, dtype=np.float64), np.asarray(missing)
    goal = np.asarray(wanted, dtype=np.float64)
    if np.any(goal < 0):
        raise ValueError("heat wanted below 0")
    start, inside = _inside(aligned, len(sums) - 1)
    found = np.searchsorted(sums, sums[start] + goal[:, None] - ROUNDING) - 1
    stop = np.maximum(found, start)
    known = inside & (stop < len(sums) - 1)
    stop = np.minimum(stop, len(sums) - 2)
    thin = gaps[stop + 1] - gaps[start] > GAP_SHARE * (stop + 1 - start)
    return np.where(known & ~thin, (stop - start).astype(np.float64), UNKNOWN)


def days_to_event(
    *, happened: ArrayLike, read: ArrayLike, aligned: Aligned, within: int = HORIZON_D
) -> NDArray[np.float64]:
    """Return after how many days of each year something first happened. [d]

    Parameters
    ----------
    happened : array_like of bool, shape (n,)
        The days on which it did.
    read : array_like of bool, shape (n,)
        The days with a reading.
    aligned : Aligned
        From which day on, for f stands and y years.
    within : int
        How far ahead to look. [d]

    Returns
    -------
    NDArray, shape (f, y)
        0 if it happened on that very day, infinite if not within so many days; NaN
        in the stand's own year, where the record does not reach, or where more than
        a tenth of the days looked through were not read.

    Notes
    -----
    The next such day by one sweep backwards, then a look-up ([CALC]_).

    Examples
    --------
    >>> import datetime as dt
    >>> from reports.calc.forecast.years import align
    >>> there = align(
    ...     first_day=dt.date(2020, 1, 1), days=4, on=[dt.date(2021, 1, 2)]
    ... )
    >>> days_to_event(
    ...     happened=[True, False, False, True], read=[True] * 4, aligned=there
    ... )
    array([[2.]])
    """
    yes = np.asarray(happened, dtype=bool)
    count = len(yes)
    gaps = np.concatenate(([0], np.cumsum(~np.asarray(read, dtype=bool))))
    start, inside = _inside(aligned, count)
    places = np.where(yes, np.arange(count), count + within + 1)
    ahead = np.append(np.minimum.accumulate(places[::-1])[::-1], count + within + 1)
    days = ahead[start] - start
    comes = days <= within
    stop = np.where(comes, start + days + 1, start + within + 1)
    known = inside & (comes | (stop <= count))
    stop = np.minimum(stop, count)
    thin = gaps[stop] - gaps[start] > GAP_SHARE * (stop - start)
    out = np.where(comes, days.astype(np.float64), NEVER)
    return np.where(known & ~thin, out, UNKNOWN)


def _inside(
    aligned: Aligned, count: int
) -> tuple[NDArray[np.int64], NDArray[np.bool_]]:
    inside = (aligned.at >= 0) & (aligned.at < count) & ~aligned.own
    return np.clip(aligned.at, 0, max(count - 1, 0)), inside
