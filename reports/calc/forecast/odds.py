"""What the years say together: days by chance, and the share of years."""

from __future__ import annotations

import numpy as np
from numpy.typing import ArrayLike, NDArray

YEARS_LEAST = 5  # years, below it no odds are told, [ASSUMED]
YEARS_FEW = 10  # years, below it odds are told with a warning, [ASSUMED]
CHANCES = (0.1, 0.5, 0.9)  # share of years, [COMMON]
THIRD = 1 / 3  # of a place, number 8 of the nine ways, [HYNDMAN96]


def days_by_chance(
    days: ArrayLike, chances: tuple[float, ...] = CHANCES
) -> NDArray[np.float64]:
    """Return the day by which a stage has come in a share of the years. [d]

    Parameters
    ----------
    days : array_like, shape (..., y)
        Days in each year. [d] NaN where a year tells nothing, infinite for never.
    chances : tuple of float, length c
        Shares of years. [0–1]

    Returns
    -------
    NDArray, shape (..., c)
        Infinite where so many years never came to it, NaN with fewer than 5 years.

    Raises
    ------
    ValueError
        If a chance is outside 0 to 1.

    Notes
    -----
    With n years in order, the place of chance p is ``p (n + 1/3) + 1/3``, between
    its neighbours in proportion and never beyond the first and last
    ([HYNDMAN96]_). Between a day and never there is no day.

    Examples
    --------
    >>> days_by_chance([10.0, 20.0, 30.0, 40.0, 50.0], (0.5,))
    array([30.])
    """
    if not all(0 <= chance <= 1 for chance in chances):
        raise ValueError("a chance outside 0 to 1")
    rows = np.sort(np.asarray(days, dtype=np.float64), axis=-1)
    years = np.count_nonzero(~np.isnan(rows), axis=-1)[..., None]
    place = np.asarray(chances) * (years + THIRD) + THIRD
    place = np.clip(place, 1, np.maximum(years, 1)) - 1
    low = np.floor(place + 1e-9).astype(np.int64)
    if not rows.shape[-1]:
        return np.full(place.shape, np.nan)
    high = np.minimum(low + 1, np.maximum(years - 1, 0))
    first = np.take_along_axis(rows, low, axis=-1)
    second = np.take_along_axis(rows, high, axis=-1)
    part = np.clip(place - low, 0.0, 1.0)
    finite = np.isfinite(first) & np.isfinite(second)
    step = np.where(finite, second, 0.0) - np.where(finite, first, 0.0)
    whole = np.where(part > 0, np.maximum(first, second), first)
    out = np.where(finite, first + part * step, whole)
    return np.where(years >= YEARS_LEAST, out, np.nan)


def share_of_years(came: ArrayLike, known: ArrayLike) -> NDArray[np.float64]:
    """Return the share of the years in which something came. [0–1]

    Parameters
    ----------
    came, known : array_like of bool, shape (..., y)
        Years in which it did, and years that tell anything.

    Returns
    -------
    NDArray, shape (...)
        NaN with fewer than 5 years.

    Notes
    -----
    A count over a count ([CALC]_).

    Examples
    --------
    >>> share_of_years([True, True, False, True, True], [True] * 5)
    array(0.8)
    """
    tells = np.asarray(known, dtype=bool)
    years = np.count_nonzero(tells, axis=-1)
    hits = np.count_nonzero(np.asarray(came, dtype=bool) & tells, axis=-1)
    share = hits / np.maximum(years, 1)
    return np.asarray(np.where(years >= YEARS_LEAST, share, np.nan))


def years_known(days: ArrayLike) -> NDArray[np.int64]:
    """Return how many years tell anything.

    Parameters
    ----------
    days : array_like, shape (..., y)
        Days in each year, NaN where a year tells nothing.

    Returns
    -------
    NDArray of int, shape (...)
        Number of years.

    Notes
    -----
    A count ([CALC]_).

    Examples
    --------
    >>> years_known([1.0, float("nan"), float("inf")])
    array(2)
    """
    told = ~np.isnan(np.asarray(days, dtype=np.float64))
    return np.asarray(np.count_nonzero(told, axis=-1))
