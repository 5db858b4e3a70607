"""Kinds and their figures."""

import factory
from factory.django import DjangoModelFactory

from records import models as kept
from tests.factories.record import RecordFactory


class KindFactory(DjangoModelFactory):
    class Meta:
        model = kept.Kind

    slug = factory.Sequence(lambda n: f"kind-{n}")
    name = factory.Sequence(lambda n: f"Kind {n}")
    family = "A family"
    use, group, season = "cover", "broadleaf", "warm"


class KindFigureFactory(DjangoModelFactory):
    class Meta:
        model = kept.KindFigure

    class Params:
        # Cornell's 50 lb/ac for buckwheat, drilled; behind the cast's own figures.
        fifty_pounds_drilled = factory.Trait(
            attribute="seeding_rate_drilled",
            low=50,
            high=50,
            unit="lb/ac",
            source="CORN-BW",
            place=9000,
        )

    kind = factory.SubFactory(KindFactory)
    attribute, low, high, unit, source = "dry_matter", 1, 2, "ton/ac", "ASSUMED"
    place = factory.Sequence(int)


class FarmFigureFactory(RecordFactory):
    class Meta:
        model = kept.FarmFigure

    kind = factory.SubFactory(KindFactory)
    attribute, low, high, unit = "dry_matter", 1.5, 1.5, "ton/ac"
    reason = "Weighed here in two summers"


class OwnAssumptionFactory(RecordFactory):
    class Meta:
        model = kept.OwnAssumption

    key = factory.Sequence(lambda n: f"assumption_{n}")
    value, low, high, unit = 0.5, 0.0, 1.0, "share"
    reason = "Looked at here for years"
