"""The cast: two farms, the people on them, and one of every record."""

import datetime as dt
from dataclasses import dataclass
from typing import Any

import factory
from factory.django import DjangoModelFactory

from farm import models as land
from farm.models import Farm, Role, User
from farm.units import M2_PER_ACRE
from records import models as kept

WRITTEN_AT = dt.datetime(2026, 9, 30, 12, tzinfo=dt.UTC)
ARRIVED = dt.date(2020, 1, 1)
SOWN = dt.date(2026, 6, 1)
FLOWERED = dt.date(2026, 7, 4)
ENDED = dt.date(2026, 7, 20)


class UserFactory(DjangoModelFactory):
    class Meta:
        model = User

    email = factory.Sequence(lambda n: f"person{n}@example.org")
    name = factory.Sequence(lambda n: f"Person {n}")


class FarmFactory(DjangoModelFactory):
    class Meta:
        model = Farm

    name = factory.Sequence(lambda n: f"Farm {n}")
    slug = factory.Sequence(lambda n: f"farm-{n}")
    latitude, longitude = 42.73, -76.65


class MembershipFactory(DjangoModelFactory):
    class Meta:
        model = land.Membership

    farm = factory.SubFactory(FarmFactory)
    user = factory.SubFactory(UserFactory)
    role = Role.OWNER
    since = ARRIVED


class RecordFactory(DjangoModelFactory):
    class Meta:
        abstract = True

    farm = factory.SubFactory(FarmFactory)
    written_by = factory.SubFactory(UserFactory)
    written_at = WRITTEN_AT


def beside(maker: Any, **more: Any) -> factory.SubFactory:
    """Another record of the same farm, written by the same hand."""
    same = {name: factory.SelfAttribute(f"..{name}") for name in ("farm", "written_by")}
    return factory.SubFactory(maker, **same, **more)


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

    kind = factory.SubFactory(KindFactory)
    attribute, low, high, unit, source = "dry_matter", 1, 2, "ton/ac", "ASSUMED"
    place = factory.Sequence(int)


class FarmFigureFactory(RecordFactory):
    class Meta:
        model = kept.FarmFigure

    kind = factory.SubFactory(KindFactory)
    attribute, low, high, unit = "dry_matter", 1.5, 1.5, "ton/ac"
    reason = "Weighed here in two summers"


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


class InputProductFactory(RecordFactory):
    class Meta:
        model = kept.InputProduct

    name = factory.Sequence(lambda n: f"Product {n}")
    type = "compost"


class ApplicationFactory(RecordFactory):
    class Meta:
        model = kept.Application

    product = beside(InputProductFactory)
    field = beside(FieldFactory)
    area_m2 = factory.SelfAttribute("field.area_m2")
    measure, amount_si, applied_on = "mass", 500.0, dt.date(2026, 5, 20)


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


@dataclass
class Household:
    """One farm with one record of every noun, by the noun's name in addresses."""

    farm: Farm
    kind: kept.Kind
    records: dict[str, Any]

    def __getitem__(self, noun: str) -> Any:
        return self.records[noun]


@dataclass
class World:
    """Our farm with its people, and the neighbour's, whose owner is a stranger here."""

    ours: Household
    theirs: Household
    owner: User
    manager: User
    crew: User
    inspector: User
    stranger: User

    @property
    def farm(self) -> Farm:
        return self.ours.farm


def make_world() -> World:
    farm = FarmFactory(name="Alder Hill", slug="alder-hill")
    people = {role.value: UserFactory(name=role.value.title()) for role in Role}
    for role, person in people.items():
        MembershipFactory(farm=farm, user=person, role=role)
    next_door = FarmFactory(name="Birch Flat", slug="birch-flat")
    stranger = MembershipFactory(farm=next_door, user__name="Stranger").user
    return World(
        ours=furnished(farm, by=people["owner"]),
        theirs=furnished(next_door, by=stranger),
        stranger=stranger,
        **people,
    )


def furnished(farm: Farm, *, by: User) -> Household:
    """One record of every noun on a farm, each leaning on the others."""
    here = {"farm": farm, "written_by": by}
    kind = KindFactory(farm=farm, slug=f"{farm.slug}--buckwheat", name="Buckwheat")
    KindFigureFactory(kind=kind)
    field = FieldFactory(**here, name="North")
    lot = SeedLotFactory(**here, kind=kind, lot_number="BW-26")
    planting = PlantingFactory(**here, field=field, line__kind=kind, line__lot=lot)
    product = InputProductFactory(**here, name="Leaf compost")
    station = StationFactory(**here, name="Barn", is_main=True)
    WeatherDayFactory(station=station)
    return Household(
        farm,
        kind,
        {
            "fields": field,
            "land-statements": LandStatementFactory(**here, field=field),
            "seed-lots": lot,
            "plantings": planting,
            "observations": ObservationFactory(**here, planting=planting),
            "biomass-samples": BiomassSampleFactory(**here, planting=planting),
            "terminations": TerminationFactory(**here, planting=planting),
            "input-products": product,
            "applications": ApplicationFactory(**here, product=product, field=field),
            "stations": station,
            "own-figures": FarmFigureFactory(**here, kind=kind),
        },
    )
