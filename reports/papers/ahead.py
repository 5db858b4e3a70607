"""A farm as one looks ahead from a day: what every page on it shares."""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping
from dataclasses import dataclass

from farm.models import Farm
from reports.calc.forecast import YEARS_LEAST
from reports.calc.season.ahead.as_of import as_of
from reports.calc.season.ahead.growing import Growing
from reports.calc.season.ahead.left_out import years_left_out
from reports.calc.season.ahead.outlook import full_years, growing_under, outlooks
from reports.calc.shapes.ahead import LeftOut, Outlook
from reports.calc.shapes.ledger import FieldLedger, PlantingFacts
from reports.ledger import SeasonLedger
from reports.ledger.ahead import ahead_ledger


@dataclass(frozen=True)
class Ahead:
    """Fields with their stands, what lies ahead of each, and the years behind it."""

    today: dt.date
    ledger: SeasonLedger
    fields: tuple[FieldLedger, ...]
    growing: Growing
    outlooks: Mapping[int, Outlook]

    def stand(self, pk: int) -> tuple[FieldLedger, PlantingFacts] | None:
        """One stand with its field, None where the farm has none such."""
        rows = ((field, row) for field in self.fields for row in field.plantings)
        return next(((field, row) for field, row in rows if row.id == pk), None)


def growing_for(farm: Farm, ledger: SeasonLedger, today: dt.date) -> Growing:
    return growing_under(
        ledger.weather,
        today=today,
        assumptions=dict(ledger.assumptions),
        whole_fahrenheit=ledger.whole_fahrenheit,
        southern=farm.is_southern,
    )


def ahead_of(farm: Farm, today: dt.date, *, only: int | None = None) -> Ahead:
    """Read the farm and reckon what lies ahead of its stands, or of one field's."""
    ledger = ahead_ledger(farm, today)
    fields = as_of(ledger.fields, today)
    growing = growing_for(farm, ledger, today)
    stands = [
        row for field in fields if only in {None, field.id} for row in field.plantings
    ]
    told = outlooks(stands, growing)
    return Ahead(today, ledger, fields, growing, {row.planting_id: row for row in told})


@dataclass(frozen=True)
class StationTold:
    """The station behind the dates: its name, its years, and those left out."""

    name: str
    first: dt.date
    read_to: dt.date
    years: tuple[int, ...]
    left_out: tuple[LeftOut, ...]
    enough: bool


def station_told(growing: Growing) -> StationTold | None:
    """What the station tells of the dates on a page, None without weather."""
    weather = growing.sky.weather
    if weather is None:
        return None
    years = growing.sky.aligned([growing.sky.today]).years.tolist()
    out = years_left_out(growing.sky)
    return StationTold(
        name=weather.station,
        first=weather.first,
        read_to=weather.day(len(weather) - 1),
        years=tuple(years),
        left_out=out,
        enough=full_years(growing.sky) >= YEARS_LEAST,
    )


def asked_day(asked: str, today: dt.date) -> dt.date:
    """The day asked for, where it is one up to today; else today."""
    try:
        day = dt.date.fromisoformat(asked)
    except ValueError:
        return today
    return day if dt.date(1900, 1, 1) <= day <= today else today
