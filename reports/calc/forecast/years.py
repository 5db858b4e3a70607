"""The same day in every year on record, and days without a reading made good."""

from __future__ import annotations

import datetime as dt
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray

GAP_SHARE = 0.1  # share of a spell, most days without a reading, [ASSUMED]
YEAR_DAYS = 366  # d, longest year, [CALC]


@dataclass(frozen=True, eq=False)
class Aligned:
    """Where in the record the same day of every year lies.

    Attributes
    ----------
    years : NDArray of int, shape (y,)
        Calendar years that the record touches.
    at : NDArray of int, shape (f, y)
        Position of each day in each year; outside 0 to n - 1 where not on record.
    own : NDArray of bool, shape (f, y)
        True where the year is the day's own.
    """

    years: NDArray[np.int64]
    at: NDArray[np.int64]
    own: NDArray[np.bool_]


def align(*, first_day: dt.date, days: int, on: Sequence[dt.date]) -> Aligned:
    """Return the positions of some days in every year of a record.

    Parameters
    ----------
    first_day : datetime.date
        Day of the first reading.
    days : int
        Days on record. [d] 0 or more.
    on : sequence of datetime.date, length f
        The days looked for.

    Returns
    -------
    Aligned
        Month and day stay the same; 29 February becomes the 28th in other years.

    Notes
    -----
    Days are compared by month and day, as frost dates are ([CALC]_).

    Examples
    --------
    >>> align(
    ...     first_day=dt.date(2020, 1, 1), days=800, on=[dt.date(2022, 1, 2)]
    ... ).at
    array([[  1, 367, 732]])
    """
    last = first_day + dt.timedelta(days=max(days - 1, 0))
    years = np.arange(first_day.year, last.year + 1) if days else np.arange(0)
    day = np.array(on, dtype="datetime64[D]")
    month = day.astype("datetime64[M]")
    year = day.astype("datetime64[Y]")
    same = (years - 1970).astype("datetime64[Y]").astype("datetime64[M]")
    begins = same[None, :] + (month - year.astype("datetime64[M]"))[:, None]
    longest = (begins + 1).astype("datetime64[D]") - begins.astype("datetime64[D]")
    inside = (day - month.astype("datetime64[D]"))[:, None]
    moved = begins.astype("datetime64[D]") + np.minimum(
        inside, longest - np.timedelta64(1, "D")
    )
    at = (moved - np.datetime64(first_day, "D")).astype(np.int64)
    own = years[None, :] == (year.astype(np.int64) + 1970)[:, None]
    return Aligned(years.astype(np.int64), at, own)


def made_good(daily: ArrayLike, *, first_day: dt.date) -> NDArray[np.float64]:
    """Return a daily series with each gap filled by the mean of its day of the year.

    Parameters
    ----------
    daily : array_like, shape (n,)
        One figure a day, in any unit. NaN where not read.
    first_day : datetime.date
        Day of the first figure.

    Returns
    -------
    NDArray, shape (n,)
        The same unit; NaN where no year has a reading of that day.

    Notes
    -----
    A missing day that adds nothing would make every sum come late ([ASSUMED]_).

    Examples
    --------
    >>> made_good([1.0] * 365 + [float("nan")], first_day=dt.date(2021, 1, 1))[-1]
    np.float64(1.0)
    """
    days = np.array(daily, dtype=np.float64)
    dates = np.datetime64(first_day, "D") + np.arange(len(days))
    since = dates - dates.astype("datetime64[Y]").astype("datetime64[D]")
    place = since.astype(np.int64)
    known = ~np.isnan(days)
    count = np.bincount(place[known], minlength=YEAR_DAYS)
    total = np.bincount(place[known], weights=days[known], minlength=YEAR_DAYS)
    mean = np.divide(total, count, out=np.full(YEAR_DAYS, np.nan), where=count > 0)
    days[~known] = mean[place[~known]]
    return days
