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
    days = np.array([row[0] for row in rows], dtype="datetime64[D]")
    place = (days - days[0]).astype(int)
    readings = np.full((3, int(place[-1]) + 1), np.nan)
    readings[:, place] = np.array([row[1:] for row in rows], dtype=float).T
    return Weather(str(station), rows[0][0], readings[0], readings[1], readings[2])
