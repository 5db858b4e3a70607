"""The weather of the story: read once a year, up to the day before."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator
from pathlib import Path

from farm import units
from records.models import WeatherStation
from records.reading import weather
from records.reading.demo import plain
from records.reading.demo.book import Book
from records.reading.demo.plain import Told
from records.reading.loading import load_days
from records.reading.weather import Columns, DateOrder, DayReading, RainUnit, TempUnit

COLUMNS = Columns(
    date="date",
    tmin="tmin_c",
    tmax="tmax_c",
    rain="rain_mm",
    temp_unit=TempUnit.C,
    rain_unit=RainUnit.MM,
    date_order=DateOrder.ISO,
)


def days_of(path: Path) -> tuple[DayReading, ...]:
    file = weather.read(path.read_bytes(), name=path.name, columns=COLUMNS)
    return file.stations[0].days


def batches(told: Told, path: Path) -> Iterator[tuple[dt.date, tuple[DayReading, ...]]]:
    """Each day of reading, with the days that were new on it."""
    days = days_of(path)
    since = dt.date.min
    for read_on in map(plain.day, told["read_on"]):
        yield read_on, tuple(row for row in days if since <= row.date < read_on)
        since = read_on


def station(told: Told, book: Book) -> WeatherStation:
    return WeatherStation(
        farm=book.farm,
        name=told["name"],
        latitude=told["latitude"],
        longitude=told["longitude"],
        elevation_m=units.parse_length(told["elevation"]),
        source=told["source"],
        is_main=True,
        whole_fahrenheit=False,
    )


def take(
    row: WeatherStation,
    days: tuple[DayReading, ...],
    told: Told,
    book: Book,
    now: dt.datetime,
) -> None:
    by = book.people[told["by"]]
    if row.pk is None:
        row.written_by, row.written_at = by, now
        row.full_clean()
    load_days(row, days, source=told["file"], by=by, now=now)
