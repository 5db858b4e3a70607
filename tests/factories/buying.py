"""Seed offered, dressed, ordered."""

import datetime as dt

import factory
from factory.django import DjangoModelFactory

from records import models as kept
from tests.factories.care import InputProductFactory
from tests.factories.kinds import KindFactory
from tests.factories.record import RecordFactory, beside


class SupplierFactory(RecordFactory):
    class Meta:
        model = kept.Supplier

    name = factory.Sequence(lambda n: f"Supplier {n}")


class OfferPriceFactory(DjangoModelFactory):
    class Meta:
        model = kept.OfferPrice

    bag_kg, price = 25.0, 40.0


class SeedOfferFactory(RecordFactory):
    class Meta:
        model = kept.SeedOffer
        skip_postgeneration_save = True

    supplier = beside(SupplierFactory)
    kind = factory.SubFactory(KindFactory)
    offered_on, purity_share, germination_share = dt.date(2026, 1, 5), 0.98, 0.9
    price = factory.RelatedFactory(OfferPriceFactory, factory_related_name="offer")


class SeedDressingFactory(RecordFactory):
    class Meta:
        model = kept.SeedDressing

    kind = factory.SubFactory(KindFactory)
    product = beside(InputProductFactory)
    dose_share, good_until = 0.005, dt.date(2027, 12, 1)


class OrderLineFactory(DjangoModelFactory):
    class Meta:
        model = kept.OrderLine

    kind = factory.SubFactory(KindFactory)
    bag_kg, bags, price, pls_share = 25.0, 2, 40.0, 0.88


class SeedOrderFactory(RecordFactory):
    class Meta:
        model = kept.SeedOrder
        skip_postgeneration_save = True

    supplier = beside(SupplierFactory)
    drawn_up_on = dt.date(2026, 2, 1)
    line = factory.RelatedFactory(OrderLineFactory, factory_related_name="order")
