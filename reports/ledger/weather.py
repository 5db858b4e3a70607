"""A station's days as arrays, with a gap where a day was not read."""

from __future__ import annotations

import numpy as np

from farm.models import Farm
from records.models import WeatherDay, WeatherStation
from reports.calc.shapes.ledger import Weather


def main_station(farm: Farm) -> WeatherStation | None:
    found: WeatherStation | None = (
        WeatherStation.objects.on(farm).live().filter(is_main=True).first()
    )
    return found


def weather_of(station: WeatherStation | None) -> Weather | None:
    """Every reading of a station, or None where there is none."""
    if station is None:
        return None
    rows = list(
        WeatherDay.objects.filter(station=station)
        .order_by("day")
        .values_list("day", "tmin_c", "tmax_c", "rain_mm")
    )
    if not rows:
        return None
    days, *read = zip(*rows, strict=True)
    # A day's ordinal, because an array of dates is thirty times slower to make.
    place = np.array([day.toordinal() - days[0].toordinal() for day in days])
    readings = np.full((len(read), int(place[-1]) + 1), np.nan)
    readings[:, place] = np.array(read, dtype=float)
    return Weather(str(station), days[0], *readings)
