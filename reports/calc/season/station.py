"""One station's weather summed once, so that every stand is a look-up."""

from __future__ import annotations

import datetime as dt
import math
from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from reports.calc import heat, residue
from reports.calc.shapes.basics import Span
from reports.calc.shapes.ledger import Weather

YEAR_DAYS = 366
FULL_YEAR = 365
BOTH_PLACES = 2
ON_TOP = slice(0, 3)
WORKED_IN = slice(3, 6)
LIKELY = 1
Days = NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class Logs:
    """Running logarithms of what is left, shape (n + 1, 6).

    Columns: left on top slow, likely, fast; worked in slow, likely, fast.
    """

    stem: Days
    leaf: Days


class StationTotals:
    """Degree days and decomposition days from ``calendar.first`` on, summed once.

    A day without a reading takes the mean of the same day of the year at the
    station, where a whole year is on record. Where that fails too, residue goes by
    the half-lives of the calendar and heat tells nothing ([ASSUMED]_).
    """

    def __init__(
        self,
        *,
        weather: Weather | None,
        calendar: Span,
        assumptions: Mapping[str, float],
    ) -> None:
        self.calendar = calendar
        self.days = calendar.days
        first = calendar.first.toordinal()
        self._dates = [
            dt.date.fromordinal(day) for day in range(first, first + self.days)
        ]
        self._weather = weather if weather is not None and len(weather) else None
        self._assumptions = assumptions
        self._heat: dict[float, heat.RunningTotal] = {}
        self._logs: dict[float, Logs] = {}
        self._rot: tuple[Days, Days] | None = None

    def index(self, day: dt.date) -> int:
        """Return the position of a day in the calendar. [d]"""
        return (day - self.calendar.first).days

    def day(self, index: int) -> dt.date:
        """Return the day at a position."""
        if 0 <= index < len(self._dates):
            return self._dates[index]
        return self.calendar.first + dt.timedelta(days=index)

    @property
    def last_read(self) -> int | None:
        """Return the position of the record's last day, None without weather. [d]"""
        weather = self._weather
        if weather is None:
            return None
        return self.index(weather.first) + len(weather) - 1

    def heat_day(self, *, start: dt.date, base_c: float, target: float) -> int | None:
        """Return the position of the day by which the heat was there, or None."""
        if self._weather is None:
            return None
        running = self._running_heat(base_c)
        first = self.index(start)
        if not 0 <= first < self.days:
            return None
        day = heat.day_reaching(running, start=first, target=target)
        if day is None or heat.missing_between(running, start=first, stop=day + 1):
            return None
        return day

    def logs(self, k_per_dd: float) -> Logs:
        """Return what is left by rate, each rate summed once."""
        if k_per_dd not in self._logs:
            self._logs[k_per_dd] = Logs(
                stem=self._columns(k_per_dd),
                leaf=self._columns(k_per_dd * residue.LEAF_FACTOR),
            )
        return self._logs[k_per_dd]

    def _running_heat(self, base_c: float) -> heat.RunningTotal:
        weather = self._weather
        assert weather is not None
        if base_c not in self._heat:
            daily = heat.degree_days(
                tmin_c=weather.tmin_c, tmax_c=weather.tmax_c, base_c=base_c
            )
            self._heat[base_c] = heat.running_total(self._laid(weather, daily))
        return self._heat[base_c]

    def _columns(self, k_per_dd: float) -> Days:
        choices = self._assumptions
        ranges = (choices["decay_slow"], 1.0, choices["decay_fast"])
        half_lives = (choices["half_life_on_top"], choices["half_life_worked_in"])
        out = np.empty((self.days + 1, len(ranges) * BOTH_PLACES))
        for place, daily in enumerate(self._decomposition()):
            unknown = np.isnan(daily)
            known = np.where(unknown, 0.0, daily)
            by_calendar = np.concatenate(([0], np.cumsum(unknown)))
            by_calendar = by_calendar * (-math.log(2) / half_lives[place])
            for column, ratio in enumerate(ranges):
                log = residue.step_running_log(dd=known, k_per_dd=k_per_dd * ratio)
                out[:, place * len(ranges) + column] = log + by_calendar * ratio
        return out

    def _decomposition(self) -> tuple[Days, Days]:
        if self._rot is None:
            self._rot = self._rotting()
        return self._rot

    def _rotting(self) -> tuple[Days, Days]:
        weather = self._weather
        if weather is None:
            unknown = np.full(self.days, np.nan)
            return unknown, unknown
        rot = residue.decomposition_days(
            tmin_c=weather.tmin_c, tmax_c=weather.tmax_c, water_mm=weather.rain_mm
        )
        surface = np.where(rot.missing, np.nan, rot.surface)
        buried = np.where(rot.missing, np.nan, rot.buried)
        return self._laid(weather, surface), self._laid(weather, buried)

    def _laid(self, weather: Weather, daily: Days) -> Days:
        out = np.full(self.days, np.nan)
        shift = self.index(weather.first)
        start, stop = max(shift, 0), min(shift + len(daily), self.days)
        if stop > start:
            out[start:stop] = daily[start - shift : stop - shift]
        gaps = np.flatnonzero(np.isnan(out))
        if len(gaps) and len(daily) >= FULL_YEAR:
            mean = _mean_year(_day_of_year(weather.first, len(daily)), daily)
            out[gaps] = mean[_day_of_year(self.calendar.first, self.days)[gaps]]
        return out


def _mean_year(day_of_year: NDArray[np.int64], daily: Days) -> Days:
    known = ~np.isnan(daily)
    days = day_of_year[known]
    count = np.bincount(days, minlength=YEAR_DAYS)
    total = np.bincount(days, weights=daily[known], minlength=YEAR_DAYS)
    mean = np.divide(total, count, out=np.full(YEAR_DAYS, np.nan), where=count > 0)
    # 31 December of a leap year may be on no record.
    return np.asarray(np.where(np.isnan(mean), np.roll(mean, 1), mean))


def _day_of_year(first: dt.date, days: int) -> NDArray[np.int64]:
    dates = np.datetime64(first, "D") + np.arange(days)
    whole = dates - dates.astype("datetime64[Y]").astype("datetime64[D]")
    return np.asarray(whole.astype(np.int64))
