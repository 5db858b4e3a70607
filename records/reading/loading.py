"""A station's readings into its table: all or nothing, and never twice."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterable
from dataclasses import dataclass

from django.db import transaction

from farm.models import Change, User
from farm.writing import note, write
from records.models import WeatherDay, WeatherStation
from records.reading.weather import DayReading

ROWS_A_STATEMENT = 2000


@dataclass(frozen=True)
class Loaded:
    """How many days were new and how many were read again."""

    added: int
    again: int


def load_days(
    station: WeatherStation,
    days: Iterable[DayReading],
    *,
    source: str,
    by: User,
    now: dt.datetime,
) -> Loaded:
    """Save a station, new or known, with its readings; known days are updated."""
    rows = list(days)
    with transaction.atomic():
        if station.pk is None:
            write(station, by=by, now=now)
        before = station.days.count()
        WeatherDay.objects.bulk_create(
            [
                WeatherDay(
                    station=station,
                    day=row.date,
                    tmin_c=row.tmin_c,
                    tmax_c=row.tmax_c,
                    rain_mm=row.rain_mm,
                )
                for row in rows
            ],
            batch_size=ROWS_A_STATEMENT,
            update_conflicts=True,
            unique_fields=["station", "day"],
            update_fields=["tmin_c", "tmax_c", "rain_mm"],
        )
        added = station.days.count() - before
        told = {
            "file": source,
            "first": str(rows[0].date),
            "last": str(rows[-1].date),
            "days": str(len(rows)),
        }
        note(station, verb=Change.Verb.LOADED, by=by, now=now, after=told)
    return Loaded(added=added, again=len(rows) - added)
