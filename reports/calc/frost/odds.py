"""Frost odds: what the years on record say of the years to come."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from enum import StrEnum
from math import ceil, floor

import numpy as np
from numpy.typing import ArrayLike

from reports.calc.frost.years import FIRST_FALL_MONTH, YearFrost

YEARS_ENOUGH = 20  # years, [ASSUMED]
YEARS_FEW = 10  # years, from here with a warning, [ASSUMED]
YEARS_LEAST = 5  # years, below it no date is told, [ASSUMED]
CHANCES = (0.1, 0.5, 0.9)  # share of years, one, five and nine in ten, [COMMON]
PLAIN_YEAR = 2001  # year, any without 29 February, [CALC]
SHARE_DIGITS = 9  # digits, so that 3 years of 30 are a tenth, [CALC]
DAY_SLACK = 1e-6  # d, rounding in a quantile, [CALC]


class Enough(StrEnum):
    """Whether the years on record carry a statement of odds."""

    ENOUGH = "enough"
    FEW = "few"
    VERY_FEW = "very_few"
    TOO_FEW = "too_few"


@dataclass(frozen=True)
class FrostDate:
    """A date and the chance that goes with it.

    Attributes
    ----------
    chance : float
        Share of years: in spring with a frost on that day or later, in fall with a
        frost on that day or earlier. [0–1]
    day_of_year : float or None
        Day of a year without 29 February, with its fraction. [d] None if so many
        years have no such frost, or too few years are on record.
    month_day : tuple of int or None
        Month and day, rounded to the careful side: later in spring, earlier in fall.
    """

    chance: float
    day_of_year: float | None
    month_day: tuple[int, int] | None


@dataclass(frozen=True)
class FrostOdds:
    """Dates by chance at one temperature, and the years they rest on.

    Attributes
    ----------
    threshold_f : int
        At or below. [°F]
    spring, fall : tuple of FrostDate
        One a chance, in the order asked for.
    spring_years, fall_years : int
        Half years used.
    first_year, last_year : int or None
        First and last year of which a half was used.
    no_spring_frost, no_fall_frost : int
        Years used that had no such frost in that half; they count as years.
    enough : Enough
        By the half with fewer years.
    """

    threshold_f: int
    spring: tuple[FrostDate, ...]
    fall: tuple[FrostDate, ...]
    spring_years: int
    fall_years: int
    first_year: int | None
    last_year: int | None
    no_spring_frost: int
    no_fall_frost: int
    enough: Enough

    @property
    def years_used(self) -> int:
        """Return the years behind the weaker half."""
        return min(self.spring_years, self.fall_years)


def plain_day(day: date) -> int:
    """Return the day of a year without 29 February. [d]

    Parameters
    ----------
    day : date
        Any day; 29 February counts as the 28th.

    Returns
    -------
    int
        1 to 365. [d]

    Notes
    -----
    Dates are compared by month and day, or leap years would run a day ahead
    ([CALC]_).

    Examples
    --------
    >>> plain_day(date(2012, 2, 29)), plain_day(date(2012, 12, 31))
    (59, 365)
    """
    same = day.replace(day=28) if (day.month, day.day) == (2, 29) else day
    return same.replace(year=PLAIN_YEAR).timetuple().tm_yday


def date_quantile(days: ArrayLike, share: float) -> float:
    """Return the day by which a share of the dates has come. [d]

    Parameters
    ----------
    days : array_like, shape (n,)
        Days of the year. [d] One or more.
    share : float
        Share of the dates. [0–1]

    Returns
    -------
    float
        Day of the year, with its fraction. [d] Never beyond the dates seen.

    Raises
    ------
    ValueError
        If there is no date or the share is outside 0 to 1.

    Notes
    -----
    Median-unbiased estimate, number 8 of [HYNDMAN96]_, which supposes no shape of
    the dates. Others take number 7 ([SHARPSHOOTR]_), a day nearer the middle at one
    year in ten. With 30 years such a date is good to about 3 days.

    Examples
    --------
    >>> date_quantile([100, 110, 120], 0.5)
    110.0
    """
    known = np.asarray(days, dtype=np.float64)
    if not known.size or not 0 <= share <= 1:
        raise ValueError("no date, or share outside 0 to 1")
    return float(np.quantile(known, share, method="median_unbiased"))


def frost_odds(
    years: Sequence[YearFrost], *, chances: Sequence[float] = CHANCES
) -> FrostOdds:
    """Return the dates of the last spring and first fall frost by chance.

    Parameters
    ----------
    years : sequence of YearFrost
        From :func:`~reports.calc.frost.years.year_frosts`, one temperature.
    chances : sequence of float
        Shares of years to tell a date for. [0–1] Above 0, below 1.

    Returns
    -------
    FrostOdds
        A chance of 0.1 gives the late last frost of one spring in ten and the early
        first frost of one fall in ten.

    Raises
    ------
    ValueError
        If there is no year, the temperatures differ, or a chance is outside its
        range.

    Notes
    -----
    With p the share of years that have such a frost, the fall date is the quantile
    ``chance / p`` of their dates and the spring date the quantile ``1 - chance / p``;
    none where the chance is above p. So a year without frost stays in the count, as
    in the mixed distribution of the older [NCEI-NORMALS]_, whose sense of chance this
    is too: on that day or later in spring, or earlier in fall. Those are smoothed and
    differ by days: at 28 °F and warmer the row of [VICTORY-NOAA]_ is met within 9.

    Examples
    --------
    >>> from reports.calc.frost.years import year_frosts
    >>> years = year_frosts(
    ...     first_day=date(2013, 1, 1), tmin_c=[0.0] + [9.0] * 364, threshold_f=32
    ... )
    >>> odds = frost_odds(years)
    >>> odds.enough.value, odds.no_fall_frost, odds.spring[1].month_day
    ('too_few', 1, None)
    """
    if len({year.threshold_f for year in years}) != 1:
        raise ValueError("no year, or years at different temperatures")
    if not all(0 < chance < 1 for chance in chances):
        raise ValueError("a chance outside 0 to 1")
    springs = [year.last_spring for year in years if year.usable_spring]
    falls = [year.first_fall for year in years if year.usable_fall]
    used = [year.year for year in years if year.usable_spring or year.usable_fall]
    return FrostOdds(
        threshold_f=years[0].threshold_f,
        spring=tuple(_dated(springs, chance, spring=True) for chance in chances),
        fall=tuple(_dated(falls, chance, spring=False) for chance in chances),
        spring_years=len(springs),
        fall_years=len(falls),
        first_year=min(used, default=None),
        last_year=max(used, default=None),
        no_spring_frost=springs.count(None),
        no_fall_frost=falls.count(None),
        enough=_enough(min(len(springs), len(falls))),
    )


def _dated(frosts: Sequence[date | None], chance: float, *, spring: bool) -> FrostDate:
    days = [plain_day(day) for day in frosts if day is not None]
    if len(frosts) < YEARS_LEAST or not days:
        return FrostDate(chance, None, None)
    share = round(chance * len(frosts) / len(days), SHARE_DIGITS)
    if share > 1:
        return FrostDate(chance, None, None)
    day = date_quantile(days, 1 - share if spring else share)
    careful = ceil(day - DAY_SLACK) if spring else floor(day + DAY_SLACK)
    on = date(PLAIN_YEAR, 1, 1) + timedelta(days=careful - 1)
    return FrostDate(chance, day, (on.month, on.day))


def _enough(years: int) -> Enough:
    if years >= YEARS_ENOUGH:
        return Enough.ENOUGH
    if years >= YEARS_FEW:
        return Enough.FEW
    return Enough.VERY_FEW if years >= YEARS_LEAST else Enough.TOO_FEW


def chance_by_day(years: Sequence[YearFrost], *, month: int, day: int) -> float | None:
    """Return the share of years whose first fall frost came by a day. [0–1]

    Parameters
    ----------
    years : sequence of YearFrost
        From :func:`~reports.calc.frost.years.year_frosts`.
    month, day : int
        A day from 1 August on.

    Returns
    -------
    float or None
        Share of the usable years, those without frost included. [0–1] None below 5
        years.

    Raises
    ------
    ValueError
        If there is no such day, or it lies before 1 August.

    Notes
    -----
    A count of years on or before the day, over all years ([NCEI-NORMALS]_).

    Examples
    --------
    >>> chance_by_day([], month=10, day=1) is None
    True
    """
    if month < FIRST_FALL_MONTH:
        raise ValueError("the day lies before 1 August")
    falls = [year.first_fall for year in years if year.usable_fall]
    limit = plain_day(date(PLAIN_YEAR, month, day))
    if len(falls) < YEARS_LEAST:
        return None
    come = [plain_day(frost) <= limit for frost in falls if frost is not None]
    return sum(come) / len(falls)


def chance_from_day(
    years: Sequence[YearFrost], *, month: int, day: int
) -> float | None:
    """Return the share of years with a spring frost on a day or later. [0–1]

    Parameters
    ----------
    years : sequence of YearFrost
        From :func:`~reports.calc.frost.years.year_frosts`.
    month, day : int
        A day up to 31 July.

    Returns
    -------
    float or None
        Share of the usable years, those without frost included. [0–1] None below 5
        years.

    Raises
    ------
    ValueError
        If there is no such day, or it lies after 31 July.

    Notes
    -----
    A count of years on or after the day, over all years ([NCEI-NORMALS]_).

    Examples
    --------
    >>> chance_from_day([], month=5, day=1) is None
    True
    """
    if month >= FIRST_FALL_MONTH:
        raise ValueError("the day lies after 31 July")
    springs = [year.last_spring for year in years if year.usable_spring]
    limit = plain_day(date(PLAIN_YEAR, month, day))
    if len(springs) < YEARS_LEAST:
        return None
    still = [plain_day(frost) >= limit for frost in springs if frost is not None]
    return sum(still) / len(springs)
