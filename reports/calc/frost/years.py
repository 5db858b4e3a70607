"""Frost by year: the last of each spring and the first of each fall."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, timedelta

import numpy as np
from numpy.typing import ArrayLike, NDArray

# °C at 36, 32, 28 and 24 °F: frost, freeze, hard freeze, killing freeze, exact,
# [NCEI-NORMALS]
FREEZE_C = {line_f: (line_f - 32) / 1.8 for line_f in (36, 32, 28, 24)}
TENTHS_MARGIN_C = 0.05  # °C, half a tenth: 28 °F is stored as -2.2 °C, [CALC]
SPRING_READINGS = 165  # d, least readings in a spring half year, [SHARPSHOOTR]
FALL_READINGS = 119  # d, the same share of 153 days as 165 of 212, [ASSUMED]
FIRST_FALL_MONTH = 8  # month, spring runs to 31 July, fall from 1 August, [NSSH]
COLDEST_LINE_F = -40  # °F, [ASSUMED]
WARMEST_LINE_F = 40  # °F, [ASSUMED]


@dataclass(frozen=True)
class YearFrost:
    """Frosts of one calendar year at or below one temperature.

    Attributes
    ----------
    year, threshold_f : int
        Calendar year, and the temperature asked for. [°F]
    last_spring, first_fall : date or None
        Last frost to 31 July, first from 1 August; None if none was read.
    spring_missing, fall_missing : int
        Days of the half year without a reading. [d]
    usable_spring, usable_fall : bool
        Whether the half year has readings enough to count.
    """

    year: int
    threshold_f: int
    last_spring: date | None
    first_fall: date | None
    spring_missing: int
    fall_missing: int
    usable_spring: bool
    usable_fall: bool


def at_or_below(
    *, tmin_c: ArrayLike, threshold_f: int, whole_f: bool = True
) -> NDArray[np.bool_]:
    """Return the days on which the minimum was at or below a temperature.

    Parameters
    ----------
    tmin_c : array_like, any shape
        Coldest reading of each day. [°C] NaN where not read, and then False.
    threshold_f : int
        Temperature asked for. [°F] -40 to 40.
    whole_f : bool
        Whether the thermometer was read to whole °F, as United States cooperative
        stations are. False for readings with true tenths of a °C.

    Returns
    -------
    NDArray of bool, same shape
        True where at or below.

    Raises
    ------
    ValueError
        If the threshold is outside its range.

    Notes
    -----
    At or below, not below, is the sense of [NCEI-NORMALS]_. 28 °F is archived as
    -2.2 °C, above -2.222: whole-°F readings are rounded back to whole °F, others get
    half a tenth of slack. Rounding readings in tenths would turn 0.2 °C into 32 °F.

    Examples
    --------
    >>> at_or_below(tmin_c=[-2.2, 0.2], threshold_f=28)
    array([ True, False])
    """
    if not COLDEST_LINE_F <= threshold_f <= WARMEST_LINE_F:
        raise ValueError("threshold_f outside -40 to 40")
    cold = np.asarray(tmin_c, dtype=np.float64)
    if whole_f:
        return np.asarray(np.rint(cold * 1.8 + 32) <= threshold_f)
    return np.asarray(cold <= (threshold_f - 32) / 1.8 + TENTHS_MARGIN_C)


def year_frosts(
    *, first_day: date, tmin_c: ArrayLike, threshold_f: int, whole_f: bool = True
) -> tuple[YearFrost, ...]:
    """Return the last spring and first fall frost of every year on record.

    Parameters
    ----------
    first_day : date
        Day of the first reading.
    tmin_c : array_like, shape (n,)
        Coldest reading of each day. [°C] NaN where not read.
    threshold_f : int
        Temperature asked for. [°F] -40 to 40.
    whole_f : bool
        As in :func:`at_or_below`.

    Returns
    -------
    tuple of YearFrost
        One a calendar year, oldest first. Days before and after the record count as
        missing.

    Raises
    ------
    ValueError
        If the threshold is outside its range.

    Notes
    -----
    Spring is January to July and fall August to December, as in [NSSH]_, which holds
    for the northern half of the earth only. A half year counts with 165 readings
    ([SHARPSHOOTR]_) of its 212 days; its shorter fellow with the same share. That is
    lenient, since a gap in July hides no frost, so the missing days go along and the
    page shows them. The dates agree with [XCLIM]_ when that is told ``<=`` and
    1 August.

    Examples
    --------
    >>> frost = year_frosts(
    ...     first_day=date(2013, 4, 20), tmin_c=[1.0, 0.0, 5.0], threshold_f=32
    ... )
    >>> frost[0].last_spring, frost[0].spring_missing, frost[0].usable_spring
    (datetime.date(2013, 4, 21), 209, False)
    """
    cold = np.asarray(tmin_c, dtype=np.float64)
    frost = at_or_below(tmin_c=cold, threshold_f=threshold_f, whole_f=whole_f)
    if not len(cold):
        return ()
    last_day = first_day + timedelta(days=len(cold) - 1)
    read = ~np.isnan(cold)
    found = []
    for year in range(first_day.year, last_day.year + 1):
        spring = _Half(first_day, date(year, 1, 1), date(year, FIRST_FALL_MONTH, 1))
        fall = _Half(first_day, date(year, FIRST_FALL_MONTH, 1), date(year + 1, 1, 1))
        found.append(
            YearFrost(
                year=year,
                threshold_f=threshold_f,
                last_spring=spring.day(frost, -1),
                first_fall=fall.day(frost, 0),
                spring_missing=spring.days - spring.count(read),
                fall_missing=fall.days - fall.count(read),
                usable_spring=spring.count(read) >= SPRING_READINGS,
                usable_fall=fall.count(read) >= FALL_READINGS,
            )
        )
    return tuple(found)


class _Half:
    """A half year as a slice of the record."""

    def __init__(self, first_day: date, start: date, stop: date) -> None:
        self.first_day = first_day
        self.days = (stop - start).days
        self.start = max((start - first_day).days, 0)
        self.stop = max((stop - first_day).days, 0)

    def count(self, days: NDArray[np.bool_]) -> int:
        return int(np.count_nonzero(days[self.start : self.stop]))

    def day(self, days: NDArray[np.bool_], place: int) -> date | None:
        there = np.flatnonzero(days[self.start : self.stop])
        if not len(there):
            return None
        return self.first_day + timedelta(days=self.start + int(there[place]))


def season_lengths(years: Sequence[YearFrost]) -> NDArray[np.int64]:
    """Return the frost-free days between the two frosts of each year. [d]

    Parameters
    ----------
    years : sequence of YearFrost
        From :func:`year_frosts`.

    Returns
    -------
    NDArray of int, shape (m,)
        Days strictly between the frosts, of years with both halves usable and both
        frosts read. [d] Years that miss a frost are left out.

    Notes
    -----
    ``first - last - 1`` ([CALC]_). Medians do not subtract: the median length is not
    the days between the median dates.

    Examples
    --------
    >>> season_lengths(year_frosts(
    ...     first_day=date(2013, 1, 1), tmin_c=[0.0] + [9.0] * 364, threshold_f=32
    ... ))
    array([], dtype=int64)
    """
    lengths = [
        (year.first_fall - year.last_spring).days - 1
        for year in years
        if year.usable_spring and year.usable_fall
        if year.last_spring is not None and year.first_fall is not None
    ]
    return np.array(lengths, dtype=np.int64)
