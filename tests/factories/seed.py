"""Seed: lots, moves, searches."""

import datetime as dt

import factory
from factory.django import DjangoModelFactory

from records import models as kept
from tests.factories.kinds import KindFactory
from tests.factories.record import RecordFactory, beside


class SeedLotFactory(RecordFactory):
    class Meta:
        model = kept.SeedLot

    kind = factory.SubFactory(KindFactory)
    lot_number = factory.Sequence(lambda n: f"L{n}")
    received_on = dt.date(2026, 3, 10)
    received_kg = 100.0
    purity_share, germination_share = 0.98, 0.85


class SeedLineFactory(DjangoModelFactory):
    class Meta:
        model = kept.SeedLine

    kind = factory.SubFactory(KindFactory)
    seed_kg = 20.0


class SourceAskedFactory(DjangoModelFactory):
    class Meta:
        model = kept.SourceAsked

    source = factory.Sequence(lambda n: f"Seed house {n}")
    asked_on, answer = dt.date(2026, 2, 1), "None this year"


class SeedSearchFactory(RecordFactory):
    class Meta:
        model = kept.SeedSearch
        skip_postgeneration_save = True

    kind = factory.SubFactory(KindFactory)
    traits, searched_on, reason = "Untreated", dt.date(2026, 2, 3), "quantity"
    asked = factory.RelatedFactory(SourceAskedFactory, factory_related_name="search")


class StockCountFactory(RecordFactory):
    class Meta:
        model = kept.StockCount

    seed_lot = beside(SeedLotFactory)
    counted_on, mass_kg = dt.date(2026, 9, 20), 10.0


class LotMoveFactory(RecordFactory):
    class Meta:
        model = kept.LotMove

    lot = beside(SeedLotFactory)
    what, moved_on, mass_kg = "discarded", dt.date(2026, 9, 21), 2.0
