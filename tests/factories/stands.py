"""Stands: sown, seen, weighed, ended, harvested."""

import datetime as dt

import factory
from factory.django import DjangoModelFactory

from records import models as kept
from tests.factories.days import ENDED, FLOWERED, SOWN
from tests.factories.land import FieldFactory
from tests.factories.record import RecordFactory, beside
from tests.factories.seed import SeedLineFactory


class PlantingFactory(RecordFactory):
    class Meta:
        model = kept.Planting
        skip_postgeneration_save = True

    field = beside(FieldFactory)
    area_m2 = factory.SelfAttribute("field.area_m2")
    sown_on = SOWN
    line = factory.RelatedFactory(SeedLineFactory, factory_related_name="planting")


class ObservationFactory(RecordFactory):
    class Meta:
        model = kept.Observation

    planting = beside(PlantingFactory)
    seen, seen_on = "first_flower", FLOWERED


class SampleFrameFactory(DjangoModelFactory):
    class Meta:
        model = kept.SampleFrame

    area_m2, wet_kg = 0.25, 1.2


class BiomassSampleFactory(RecordFactory):
    class Meta:
        model = kept.BiomassSample
        skip_postgeneration_save = True

    planting = beside(PlantingFactory)
    cut_on, dry_share = FLOWERED, 0.15
    frame = factory.RelatedFactory(SampleFrameFactory, factory_related_name="sample")


class TerminationFactory(RecordFactory):
    class Meta:
        model = kept.Termination

    planting = beside(PlantingFactory)
    area_m2 = factory.SelfAttribute("planting.area_m2")
    ended_on, method, residue = ENDED, "mown", "on_top"


class GrazingFactory(RecordFactory):
    class Meta:
        model = kept.Grazing

    field = beside(FieldFactory)
    animals, in_on, out_on = "Sheep", dt.date(2026, 8, 1), dt.date(2026, 8, 9)


class HarvestLotFactory(RecordFactory):
    class Meta:
        model = kept.HarvestLot

    field = beside(FieldFactory)
    code = factory.Sequence(lambda n: f"H{n}")
    crop, harvested_on, mass_kg = "Squash", dt.date(2026, 9, 2), 800.0
    use, status = "food", "organic"


class StorageFactory(RecordFactory):
    class Meta:
        model = kept.Storage

    lot = beside(HarvestLotFactory)
    stored_on, place, mass_kg = dt.date(2026, 9, 2), "Cold room", 800.0


class SaleFactory(RecordFactory):
    class Meta:
        model = kept.Sale

    lot = beside(HarvestLotFactory)
    sold_on, buyer = dt.date(2026, 9, 10), "Saturday market"
    mass_kg, status = 100.0, "organic"
