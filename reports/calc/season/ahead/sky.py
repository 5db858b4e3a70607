"""The station's years as they stand on a day, each series summed once."""

from __future__ import annotations

import datetime as dt
from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from reports.calc import forecast, heat
from reports.calc.frost import at_or_below
from reports.calc.shapes.ledger import Weather

Days = NDArray[np.float64]
DAY = dt.timedelta(days=1)
SPELL_D = 30  # d, over which growth is called over, [ASSUMED]
NO_YEARS = np.empty(0, dtype=np.int64)


def fahrenheit(temp_c: float) -> int:
    """Return a temperature as the whole degrees a thermometer is read to. [°F]"""
    return round(temp_c * 1.8 + 32)


class Sky:
    """What was read up to a day, and the same days in every year before.

    Parameters
    ----------
    weather : Weather or None
        The station's record; what was read after ``today`` is not looked at.
    today : datetime.date
        The day on which one looks ahead.
    whole_fahrenheit : bool
        Whether the thermometer was read to whole °F.
    """

    def __init__(
        self, weather: Weather | None, *, today: dt.date, whole_fahrenheit: bool = True
    ) -> None:
        self.today = today
        self.weather = _until(weather, today)
        self._whole = whole_fahrenheit
        self._heat: dict[float, tuple[Days, Days]] = {}

    @property
    def days(self) -> int:
        """Return the days on record. [d]"""
        return 0 if self.weather is None else len(self.weather)

    @property
    def unread_from(self) -> dt.date:
        """Return the first day not read yet, from which the past stands in."""
        weather = self.weather
        return self.today if weather is None else weather.day(len(weather))

    def aligned(self, on: Sequence[dt.date]) -> forecast.Aligned:
        """Return the same days in every year on record."""
        if self.weather is None:
            empty = np.empty((len(on), 0))
            return forecast.Aligned(
                NO_YEARS, empty.astype(np.int64), empty.astype(np.bool_)
            )
        return forecast.align(first_day=self.weather.first, days=self.days, on=on)

    def heat_sums(self, base_c: float) -> tuple[Days, Days]:
        """Return the running totals of heat and of days without a reading."""
        if base_c not in self._heat:
            weather = self.weather
            assert weather is not None
            daily = heat.degree_days(
                tmin_c=weather.tmin_c, tmax_c=weather.tmax_c, base_c=base_c
            )
            whole = forecast.made_good(daily, first_day=weather.first)
            gaps = forecast.running(np.isnan(daily))
            self._heat[base_c] = forecast.running(whole), gaps
        return self._heat[base_c]

    def heat_so_far(
        self, *, starts: Sequence[dt.date], base_c: float
    ) -> tuple[Days, NDArray[np.bool_]]:
        """Return the heat read since each start, and whether all of it is on record."""
        weather = self.weather
        assert weather is not None
        sums, _ = self.heat_sums(base_c)
        at = np.array([weather.index(start) for start in starts])
        inside = np.clip(at, 0, self.days)
        return sums[self.days] - sums[inside], at >= 0

    def days_to_frost(
        self, on: Sequence[dt.date], *, temp_c: float, within: int = forecast.HORIZON_D
    ) -> Days:
        """Return, by day and year, the days to the next frost of a temperature."""
        weather = self.weather
        if weather is None:
            return np.empty((len(on), 0))
        cold = at_or_below(
            tmin_c=weather.tmin_c,
            threshold_f=fahrenheit(temp_c),
            whole_f=self._whole,
        )
        return forecast.days_to_event(
            happened=cold,
            read=~np.isnan(weather.tmin_c),
            aligned=self.aligned(on),
            within=within,
        )

    def days_to_cold(self, on: Sequence[dt.date], *, mean_c: float) -> Days:
        """Return the days to the next spell of thirty days too cold to grow."""
        weather = self.weather
        if weather is None:
            return np.empty((len(on), 0))
        mean = forecast.made_good(
            (weather.tmin_c + weather.tmax_c) / 2, first_day=weather.first
        )
        sums = np.concatenate(([0.0], np.cumsum(np.nan_to_num(mean))))
        ahead = np.full(self.days, np.inf)
        if self.days > SPELL_D:
            ahead[: 1 - SPELL_D] = (sums[SPELL_D:] - sums[:-SPELL_D]) / SPELL_D
        return forecast.days_to_event(
            happened=ahead < mean_c,
            read=~np.isnan(weather.tmin_c),
            aligned=self.aligned(on),
        )

    def frost_read(
        self, first: dt.date, last: dt.date, *, temp_c: float
    ) -> dt.date | None:
        """Return the first frost of a temperature read between two days."""
        weather = self.weather
        if weather is None:
            return None
        start = max(weather.index(first), 0)
        cold = at_or_below(
            tmin_c=weather.tmin_c[start : weather.index(last) + 1],
            threshold_f=fahrenheit(temp_c),
            whole_f=self._whole,
        )
        there = np.flatnonzero(cold)
        return weather.day(start + int(there[0])) if len(there) else None


def _until(weather: Weather | None, today: dt.date) -> Weather | None:
    if weather is None:
        return None
    stop = weather.index(today) + 1
    if stop <= 0 or not len(weather):
        return None
    return Weather(
        weather.station,
        weather.first,
        weather.tmin_c[:stop],
        weather.tmax_c[:stop],
        weather.rain_mm[:stop],
    )
