"""Farms of any size with years of records, the same ones every time."""

import csv
import datetime as dt
import gzip
import random
from itertools import chain

from django.conf import settings
from django.core.management import call_command
from django.db import transaction

from farm.models import Change, Farm, Membership, Record, Role, User
from farm.units import M2_PER_ACRE
from records import catalogue
from records.models import WeatherDay, WeatherStation
from tests.bench.rotation import Grower

TODAY = dt.date(2018, 12, 31)
WEATHER_YEARS = 30
ROWS_AT_ONCE = 2000
FIXTURES = settings.BASE_DIR / "fixtures"
WEATHER = FIXTURES / "weather" / "champion_nebraska.csv.gz"


def make_tables():
    """An empty database with the catalogue of kinds."""
    call_command("migrate", verbosity=0)
    catalogue.load(FIXTURES / "crops.json")


@transaction.atomic
def make_farm(name, *, fields, years):
    """A farm with its years of records; returns how many rows they take."""
    farm = Farm.objects.create(name=name.title(), slug=name, operator="Nobody")
    owner, _made = User.objects.get_or_create(email="owner@example.org")
    first = dt.date(TODAY.year - WEATHER_YEARS + 1, 1, 1)
    Membership.objects.create(farm=farm, user=owner, role=Role.OWNER, since=first)
    grower = Grower(farm, owner, random.Random(fields), today=TODAY)
    station = grower.write(WeatherStation, first, name="Barn", is_main=True)
    land = grower.land(first, fields, M2_PER_ACRE)
    for year in range(TODAY.year - years + 1, TODAY.year + 1):
        grower.season(land, year)
    for rows in grower.rows.values():
        create(rows)
    create(_days(station, first))
    create(_changes(grower))
    return sum(map(len, grower.rows.values()))


def create(rows):
    """Rows of one table, without a form's work."""
    rows = list(rows)
    type(rows[0]).objects.bulk_create(rows, batch_size=ROWS_AT_ONCE)


def _days(station, first):
    with gzip.open(WEATHER, "rt", encoding="utf-8", newline="") as file:
        for row in csv.DictReader(file):
            day = dt.date.fromisoformat(row.pop("date"))
            if first <= day <= TODAY:
                readings = {name: float(value) for name, value in row.items()}
                yield WeatherDay(station=station, day=day, **readings)


def _changes(grower):
    """One sealed change a record, and one more for every fiftieth."""
    rows = chain.from_iterable(grower.rows.values())
    written = [row for row in rows if isinstance(row, Record)]
    told = [(row, Change.Verb.WROTE, {"notes": ""}) for row in written]
    mended = {"area_m2": "4046.9"}
    told += [(row, Change.Verb.CHANGED, mended) for row in written[::50]]
    told.sort(key=lambda one: one[0].written_at)
    last = ""
    for number, (row, verb, after) in enumerate(told, start=1):
        change = Change(
            farm=grower.farm,
            number=number,
            at=row.written_at,
            by=grower.owner,
            verb=verb.value,
            noun=row._meta.model_name,
            object_id=row.pk,
            label=f"{row._meta.model_name} {row.pk}",
            after=after,
            prev=last,
        )
        last = change.digest = change.sealed()
        yield change
