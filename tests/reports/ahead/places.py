"""Where the pages ahead lie, and what they show."""

import datetime as dt

import numpy as np
from django.urls import reverse

from records.models import WeatherDay

TODAY = dt.date(2026, 7, 12)


SOWN = dt.date(2026, 6, 20)


FIGURES = (
    ("emergence_days", 3, 5, "days", "OMAFRA-BW"),
    ("canopy_days", 14, 14, "days", "MCCP3-ARROW"),
    ("first_flower_days", 28, 32, "days", "CALC"),
    ("full_bloom_days", 35, 35, "days", "CORN-HB-KEY"),
    ("viable_seed_days", 45, 45, "days", "CORN-HB-KEY"),
    ("end_after_flower_days", 7, 10, "days", "OMAFRA-BW"),
    ("regrowth_bloom_limit", 25, 25, "%", "COMMON"),
    ("kill_temp", 32, 32, "F", "ASSUMED"),
    ("seeding_rate_broadcast", 70, 70, "lb/ac", "CORN-BW"),
    ("decay_k", 0.025, 0.025, "per DD", "UPGM"),
    ("nitrogen_percent", 2, 2, "%", "MCCP3-N"),
)


def years(station, count=12, until=TODAY):
    """Years alike but for a little: warm summers, first frost in October."""
    first = dt.date(until.year - count, 1, 1)
    days = np.arange((until - first).days + 1)
    wave = 10 - 13 * np.cos(2 * np.pi * (days - 20) / 365.25) + 2 * np.sin(days * 1.7)
    WeatherDay.objects.filter(station=station).delete()
    WeatherDay.objects.bulk_create(
        WeatherDay(
            station=station,
            day=first + dt.timedelta(days=int(day)),
            tmin_c=float(mean - 6),
            tmax_c=float(mean + 6),
            rain_mm=5.0 if day % 3 == 0 else 0.0,
        )
        for day, mean in zip(days, wave, strict=True)
    )


def address(world, name, *args, query=""):
    return reverse(name, args=[world.farm.slug, *args]) + query


def on(day=TODAY):
    return f"?on={day}"


def page(client, world, name, *args, query=None):
    answer = client.get(address(world, name, *args, query=query or on()))
    assert answer.status_code == 200
    return answer
