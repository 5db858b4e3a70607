"""Land, its edges, and the weather over it."""

import datetime as dt

import factory
from factory.django import DjangoModelFactory

from farm import models as land
from farm.units import M2_PER_ACRE
from records import models as kept
from tests.factories.record import RecordFactory, beside


class FieldFactory(RecordFactory):
    class Meta:
        model = land.Field

    name = factory.Sequence(lambda n: f"Field {n}")
    area_m2 = M2_PER_ACRE
    measured = "entered"


class LandStatementFactory(RecordFactory):
    class Meta:
        model = land.LandStatement

    field = beside(FieldFactory)
    first, last = dt.date(2022, 1, 1), dt.date(2025, 12, 31)
    signer = "A former tenant"
    signed_on = dt.date(2026, 1, 15)


class StationFactory(RecordFactory):
    class Meta:
        model = kept.WeatherStation

    name = factory.Sequence(lambda n: f"Station {n}")


class WeatherDayFactory(DjangoModelFactory):
    class Meta:
        model = kept.WeatherDay

    station = factory.SubFactory(StationFactory)
    day = factory.Sequence(lambda n: dt.date(2020, 1, 1) + dt.timedelta(days=n))
    tmin_c, tmax_c, rain_mm = 12.0, 24.0, 0.0


class EdgeFactory(RecordFactory):
    class Meta:
        model = land.Edge

    field = beside(FieldFactory)
    side = factory.Sequence(lambda n: f"north, stretch {n}")
    neighbour = "Maize, sprayed"
    buffer_m = 9.0
