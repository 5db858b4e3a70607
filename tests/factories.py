"""One of every row there is, ready to be made."""

import datetime as dt
from typing import Any

import factory
from factory.django import DjangoModelFactory

from farm import models as land
from farm.models import Farm, Invitation, Role, User
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


class InvitationFactory(DjangoModelFactory):
    class Meta:
        model = Invitation

    farm = factory.SubFactory(FarmFactory)
    name = "Newcomer"
    role = Role.CREW
    made_by = factory.SubFactory(UserFactory)
    made_at = factory.LazyFunction(lambda: dt.datetime.now(dt.UTC))
    expires_at = factory.LazyAttribute(lambda one: one.made_at + dt.timedelta(days=7))


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


class GrazingFactory(RecordFactory):
    class Meta:
        model = kept.Grazing

    field = beside(FieldFactory)
    animals, in_on, out_on = "Sheep", dt.date(2026, 8, 1), dt.date(2026, 8, 9)


class IrrigationFactory(RecordFactory):
    class Meta:
        model = kept.Irrigation

    field = beside(FieldFactory)
    watered_on, water_mm = dt.date(2026, 6, 3), 12.0


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


class SupplierFactory(RecordFactory):
    class Meta:
        model = kept.Supplier

    name = factory.Sequence(lambda n: f"Supplier {n}")


class EquipmentFactory(RecordFactory):
    class Meta:
        model = kept.Equipment

    name = factory.Sequence(lambda n: f"Drill {n}")
    part = "drill"


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


class CalibrationFactory(RecordFactory):
    class Meta:
        model = kept.Calibration

    equipment = beside(EquipmentFactory)
    kind = factory.SubFactory(KindFactory)
    calibrated_on, setting, caught_kg = dt.date(2026, 5, 20), "34", 0.5
    distance_m, row_width_m, rows = 50.0, 0.19, 8


class CleanOutFactory(RecordFactory):
    class Meta:
        model = kept.CleanOut

    equipment = beside(EquipmentFactory)
    cleaned_on, held_before, method = dt.date(2026, 5, 30), "Rye", "Vacuumed"


class IncidentFactory(RecordFactory):
    class Meta:
        model = kept.Incident

    noticed_on, what, account = dt.date(2026, 6, 9), "flood", "The creek came over."


class TrainingFactory(RecordFactory):
    class Meta:
        model = kept.Training

    trained_on, person, topic = dt.date(2026, 3, 1), "A. Hand", "Tractor safety"


class OwnAssumptionFactory(RecordFactory):
    class Meta:
        model = kept.OwnAssumption

    key = factory.Sequence(lambda n: f"assumption_{n}")
    value, low, high, unit = 0.5, 0.0, 1.0, "share"
    reason = "Looked at here for years"


class DutyFactory(RecordFactory):
    class Meta:
        model = kept.Duty

    what = "end"
    field = beside(FieldFactory)
    earliest_on, latest_on = dt.date(2026, 7, 8), dt.date(2026, 7, 11)


class CalendarAddressFactory(DjangoModelFactory):
    class Meta:
        model = kept.CalendarAddress

    made_at = WRITTEN_AT


class AttachmentFactory(RecordFactory):
    class Meta:
        model = kept.Attachment

    noun = "field"
    object_id = factory.LazyAttribute(lambda made: made.farm.fields.first().pk)
    shows = "The tag"
    type = "application/pdf"
    bytes = 9
    sha256 = "0" * 64
    file = factory.django.FileField(data=b"%PDF-1.7\n%%EOF", filename="tag.pdf")


class RulesFollowedFactory(RecordFactory):
    class Meta:
        model = kept.RulesFollowed

    which, since = "workers", dt.date(2024, 1, 1)


class CertifierNumberFactory(RecordFactory):
    class Meta:
        model = kept.CertifierNumber

    key = factory.Sequence(lambda n: f"organic_us.seed-search.sources_{n}")
    value, low, high = 4, 1, 10
    note, document = "Told at the inspection of 2025", "Letter of 3 June 2025"


class FindingReplyFactory(RecordFactory):
    class Meta:
        model = kept.FindingReply

    key = factory.Sequence(lambda n: f"tag-age.tag_old.seed-lots.{n}")
    finding, reply = "An old tag", "Tested again at home"
    replied_on = dt.date(2026, 9, 20)


class ChangeToldFactory(RecordFactory):
    class Meta:
        model = kept.ChangeTold

    key = factory.Sequence(lambda n: f"2026.inputs.came.Feather meal {n}")
    change, how = "New: Feather meal", "By letter"
    told_on = dt.date(2026, 9, 20)


class PrintJobFactory(DjangoModelFactory):
    class Meta:
        model = kept.PrintJob

    farm = factory.SubFactory(FarmFactory)
    paper, year, today = "packet", 2026, dt.date(2027, 1, 15)
    asked_by = factory.SubFactory(UserFactory)
    asked_at = dt.datetime(2027, 1, 15, 9, tzinfo=dt.UTC)
