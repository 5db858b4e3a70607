"""The cast: two farms, the people on them, and one of every record."""

import datetime as dt
from dataclasses import dataclass
from typing import Any

from farm.models import Farm, Role, User
from records.models import Kind
from records.models.calendars import sealed
from tests.factories import (
    ApplicationFactory,
    ApplicatorLicenceFactory,
    BiomassSampleFactory,
    CalendarAddressFactory,
    CalibrationFactory,
    CertifierNumberFactory,
    ChangeToldFactory,
    CleanOutFactory,
    CompostBatchFactory,
    DutyFactory,
    EdgeFactory,
    EquipmentFactory,
    FarmFactory,
    FarmFigureFactory,
    FieldFactory,
    FindingReplyFactory,
    GrazingFactory,
    HarvestLotFactory,
    IncidentFactory,
    InputLotFactory,
    InputProductFactory,
    IrrigationFactory,
    KindFactory,
    KindFigureFactory,
    LandStatementFactory,
    LotMoveFactory,
    MembershipFactory,
    MulchSheetFactory,
    ObservationFactory,
    OwnAssumptionFactory,
    PlantingFactory,
    RulesFollowedFactory,
    SaleFactory,
    SeedDressingFactory,
    SeedLotFactory,
    SeedOfferFactory,
    SeedOrderFactory,
    SeedSearchFactory,
    SoilTestFactory,
    StationFactory,
    StockCountFactory,
    StorageFactory,
    SupplierFactory,
    TerminationFactory,
    TrainingFactory,
    UserFactory,
    WeatherDayFactory,
)

# Which records are made after others, and what each leans on.
LEANING: tuple[tuple[str, Any, dict[str, str]], ...] = (
    ("land-statements", LandStatementFactory, {"field": "fields"}),
    ("edges", EdgeFactory, {"field": "fields"}),
    ("observations", ObservationFactory, {"planting": "plantings"}),
    ("biomass-samples", BiomassSampleFactory, {"planting": "plantings"}),
    ("terminations", TerminationFactory, {"planting": "plantings"}),
    (
        "applications",
        ApplicationFactory,
        {"field": "fields", "product": "input-products"},
    ),
    ("duties", DutyFactory, {"field": "fields", "planting": "plantings"}),
    ("compost-batches", CompostBatchFactory, {}),
    ("grazings", GrazingFactory, {"field": "fields"}),
    ("irrigations", IrrigationFactory, {"field": "fields"}),
    ("mulch-films-and-tarps", MulchSheetFactory, {"field": "fields"}),
    ("soil-tests", SoilTestFactory, {"field": "fields"}),
    ("storages", StorageFactory, {"lot": "harvest-lots"}),
    ("sales", SaleFactory, {"lot": "harvest-lots"}),
    ("suppliers", SupplierFactory, {}),
    ("lot-moves", LotMoveFactory, {"lot": "seed-lots"}),
    ("input-lots", InputLotFactory, {"product": "input-products"}),
    ("stock-counts", StockCountFactory, {"seed_lot": "seed-lots"}),
    ("clean-outs", CleanOutFactory, {"equipment": "equipment"}),
    ("incidents", IncidentFactory, {"field": "fields"}),
    ("trainings", TrainingFactory, {}),
    ("own-assumptions", OwnAssumptionFactory, {}),
    ("rules-followed", RulesFollowedFactory, {}),
    ("certifier-numbers", CertifierNumberFactory, {}),
    ("finding-replies", FindingReplyFactory, {}),
    ("changes-told", ChangeToldFactory, {}),
    ("applicator-licences", ApplicatorLicenceFactory, {}),
)
OF_A_KIND = {
    "own-figures": FarmFigureFactory,
    "seed-searches": SeedSearchFactory,
    "calibrations": CalibrationFactory,
    "seed-dressings": SeedDressingFactory,
    "seed-offers": SeedOfferFactory,
    "seed-orders": SeedOrderFactory,
}


# An inspector's days, wide enough for every record made here.
SEEN = {"sees_from": dt.date(2000, 1, 1), "sees_to": dt.date(2099, 12, 31)}


@dataclass
class Household:
    """One farm with one record of every noun, by the noun's name in addresses."""

    farm: Farm
    kind: Kind
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
        days = SEEN if role == Role.INSPECTOR else {}
        MembershipFactory(farm=farm, user=person, role=role, **days)
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
    station = StationFactory(**here, name="Barn", is_main=True)
    WeatherDayFactory(station=station)
    records = {
        "fields": field,
        "seed-lots": lot,
        "plantings": planting,
        "stations": station,
        "input-products": InputProductFactory(**here, name="Leaf compost"),
        "harvest-lots": HarvestLotFactory(**here, field=field, planting=planting),
        "equipment": EquipmentFactory(**here, name="Grain drill"),
    }
    for noun, maker, leans_on in LEANING:
        leaning = {name: records[on] for name, on in leans_on.items()}
        records[noun] = maker(**here, **leaning)
    for noun, maker in OF_A_KIND.items():
        of_kind = {"line__kind": kind} if noun == "seed-orders" else {"kind": kind}
        records[noun] = maker(**here, **of_kind)
    CalendarAddressFactory(
        farm=farm, user=by, token_hash=sealed(f"token-of-{farm.slug}")
    )
    return Household(farm, kind, records)
