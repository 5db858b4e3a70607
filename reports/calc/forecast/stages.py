"""Stages of many stands in every year, with what was seen laid over them."""

from __future__ import annotations

import numpy as np
from numpy.typing import ArrayLike, NDArray

CLOSED = 1  # place of canopy closure among the stages, which stands by itself


def lay_seen(days: ArrayLike, *, seen: ArrayLike) -> NDArray[np.float64]:
    """Return the days of each stage with observations in place of forecasts. [d]

    Parameters
    ----------
    days : array_like, shape (f, y, s)
        Days since sowing of each stage, in order. [d] NaN where not known.
    seen : array_like, shape (f, s)
        Days since sowing on which a stage was seen to come. [d] NaN where not seen.

    Returns
    -------
    NDArray, shape (f, y, s)
        What was seen is the same in every year. Later stages move by as many days as
        it came sooner or later and never lie before it; earlier ones not seen never
        lie after it.

    Raises
    ------
    ValueError
        If the shapes do not fit.

    Notes
    -----
    As one stand's dates are read in the season report; canopy closure neither moves
    others nor is bounded by them, for a thin stand flowers before it closes
    ([ASSUMED]_).

    Examples
    --------
    >>> lay_seen([[[5.0, 21.0, 30.0, 35.0]]], seen=[[np.nan, np.nan, 33.0, np.nan]])
    array([[[ 5., 21., 33., 38.]]])
    """
    told = np.asarray(days, dtype=np.float64)
    here = np.asarray(seen, dtype=np.float64)
    if told.ndim != 3 or here.shape != (told.shape[0], told.shape[2]):
        raise ValueError("the stages seen do not fit the stages forecast")
    out = told.copy()
    late = np.zeros(told.shape[:2])
    floor = np.full(told.shape[:2], -np.inf)
    for place in range(told.shape[2]):
        known = ~np.isnan(here[:, place])[:, None]
        on = np.broadcast_to(here[:, place][:, None], late.shape)
        moved = np.maximum(told[:, :, place] + late, floor)
        out[:, :, place] = np.where(known, on, moved)
        if place != CLOSED:
            gap = np.nan_to_num(on - told[:, :, place])
            late = np.where(known, gap, late)
            floor = np.where(known, np.maximum(floor, np.nan_to_num(on)), floor)
    return _not_after(out, here)


def _not_after(
    out: NDArray[np.float64], seen: NDArray[np.float64]
) -> NDArray[np.float64]:
    ceiling = np.full(out.shape[:2], np.inf)
    for place in reversed(range(out.shape[2])):
        if place == CLOSED:
            continue
        out[:, :, place] = np.minimum(out[:, :, place], ceiling)
        on = seen[:, place][:, None]
        ceiling = np.where(np.isnan(on), ceiling, np.fmin(ceiling, on))
    return out
