"""Inputs, compost, water, soil."""

import datetime as dt

import factory
from factory.django import DjangoModelFactory

from records import models as kept
from tests.factories.land import FieldFactory
from tests.factories.record import RecordFactory, beside


class InputProductFactory(RecordFactory):
    class Meta:
        model = kept.InputProduct

    name = factory.Sequence(lambda n: f"Product {n}")
    type = "compost"


class InputLotFactory(RecordFactory):
    class Meta:
        model = kept.InputLot

    product = beside(InputProductFactory)
    lot_number = factory.Sequence(lambda n: f"L-{n}")
    measure, amount_si, received_on = "mass", 800.0, dt.date(2026, 4, 2)


class ApplicationFactory(RecordFactory):
    class Meta:
        model = kept.Application

    product = beside(InputProductFactory)
    field = beside(FieldFactory)
    area_m2 = factory.SelfAttribute("field.area_m2")
    measure, amount_si, applied_on = "mass", 500.0, dt.date(2026, 5, 20)


class CompostDayFactory(DjangoModelFactory):
    class Meta:
        model = kept.CompostDay

    day, temp_c, turned = dt.date(2026, 4, 4), 60.0, True


class CompostBatchFactory(RecordFactory):
    class Meta:
        model = kept.CompostBatch
        skip_postgeneration_save = True

    name = factory.Sequence(lambda n: f"Batch {n}")
    feedstocks, method, started_on = "Straw, manure", "windrow", dt.date(2026, 4, 1)
    day = factory.RelatedFactory(CompostDayFactory, factory_related_name="batch")


class IrrigationFactory(RecordFactory):
    class Meta:
        model = kept.Irrigation

    field = beside(FieldFactory)
    watered_on, water_mm = dt.date(2026, 6, 3), 12.0


class MulchSheetFactory(RecordFactory):
    class Meta:
        model = kept.MulchSheet

    field = beside(FieldFactory)
    area_m2 = factory.SelfAttribute("field.area_m2")
    material = "polyethylene"
    laid_on, taken_off_on, went = dt.date(2026, 5, 4), dt.date(2026, 9, 25), "kept"


class SoilValueFactory(DjangoModelFactory):
    class Meta:
        model = kept.SoilValue

    name, value, unit = "pH", 6.4, "pH"


class SoilTestFactory(RecordFactory):
    class Meta:
        model = kept.SoilTest
        skip_postgeneration_save = True

    field = beside(FieldFactory)
    sampled_on, laboratory = dt.date(2026, 4, 20), "The county laboratory"
    reading = factory.RelatedFactory(SoilValueFactory, factory_related_name="test")
