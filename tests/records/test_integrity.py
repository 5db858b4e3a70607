"""What the tables themselves refuse, whoever writes to them."""

import datetime as dt

import pytest
from django.apps import apps
from django.db import IntegrityError, transaction

from tests import factories as make

BEFORE = dt.date(2026, 3, 30)
LONG_AGO = dt.date(2019, 1, 1)

REFUSED = [
    ("a field of no area", make.FieldFactory, {"area_m2": 0}),
    ("a planting of no area", make.PlantingFactory, {"area_m2": -1}),
    ("a planting without a day", make.PlantingFactory, {"sown_on": None}),
    ("a planting a metre deep", make.PlantingFactory, {"depth_m": 1}),
    ("seed of no weight", make.PlantingFactory, {"line__seed_kg": 0}),
    ("a share of nothing", make.PlantingFactory, {"line__share": 0}),
    ("a share of more than all", make.PlantingFactory, {"line__share": 1.1}),
    ("a lot of no weight", make.SeedLotFactory, {"received_kg": 0}),
    ("a lot purer than pure", make.SeedLotFactory, {"purity_share": 1.01}),
    ("more living seed than seed", make.SeedLotFactory, {"hard_share": 0.2}),
    ("a canopy of more than all", make.ObservationFactory, {"canopy_share": 1.2}),
    ("a sample without dry matter", make.BiomassSampleFactory, {"dry_share": 0}),
    ("a frame of no area", make.BiomassSampleFactory, {"frame__area_m2": 0}),
    ("an end of no area", make.TerminationFactory, {"area_m2": 0}),
    ("worked in before the end", make.TerminationFactory, {"worked_in_on": BEFORE}),
    ("worked in on no day", make.TerminationFactory, {"residue": "worked_in"}),
    ("a tarp off before on", make.TerminationFactory, {"tarp_removed_on": BEFORE}),
    ("an input lot of nothing", make.InputLotFactory, {"amount_si": 0}),
    ("nothing put on", make.ApplicationFactory, {"amount_si": 0}),
    ("put on no area", make.ApplicationFactory, {"area_m2": 0}),
    ("worked in before put on", make.ApplicationFactory, {"worked_in_on": BEFORE}),
    ("a period backwards", make.LandStatementFactory, {"last": LONG_AGO}),
    ("a figure backwards", make.KindFigureFactory, {"high": 0}),
    ("an own figure backwards", make.FarmFigureFactory, {"high": 0}),
    ("an assumption out of range", make.OwnAssumptionFactory, {"value": 2}),
    ("rain below nothing", make.WeatherDayFactory, {"rain_mm": -1}),
    ("a low above the high", make.WeatherDayFactory, {"tmin_c": 30}),
    (
        "compost done before begun",
        make.CompostBatchFactory,
        {"finished_on": BEFORE},
    ),
    ("compost that boils", make.CompostBatchFactory, {"day__temp_c": 120}),
    ("animals out before in", make.GrazingFactory, {"out_on": BEFORE}),
    ("water below nothing", make.IrrigationFactory, {"water_mm": -1}),
    ("a sheet of no area", make.MulchSheetFactory, {"area_m2": 0}),
    ("a sheet off before on", make.MulchSheetFactory, {"taken_off_on": BEFORE}),
    ("a sheet of no words", make.MulchSheetFactory, {"material": "other"}),
    ("a sheet gone on no day", make.MulchSheetFactory, {"taken_off_on": None}),
    ("a harvest of nothing", make.HarvestLotFactory, {"mass_kg": 0}),
    ("a sale of nothing", make.SaleFactory, {"mass_kg": 0}),
    ("a store of nothing", make.StorageFactory, {"mass_kg": 0}),
    ("a count below nothing", make.StockCountFactory, {"mass_kg": -1}),
    ("a count of nothing named", make.StockCountFactory, {"seed_lot": None}),
    ("a buffer below nothing", make.EdgeFactory, {"buffer_m": -1}),
    ("a void without a reason", make.TrainingFactory, {"voided_at": make.WRITTEN_AT}),
    ("a season from a month 13", make.FarmFactory, {"season_first_month": 13}),
    (
        "access over before begun",
        make.MembershipFactory,
        {"until": LONG_AGO},
    ),
]


@pytest.mark.django_db
@pytest.mark.parametrize(("told", "maker", "over"), REFUSED, ids=lambda told: str(told))
def test_a_table_refuses(told, maker, over):
    with pytest.raises(IntegrityError), transaction.atomic():
        maker(**over)


@pytest.mark.django_db
@pytest.mark.parametrize(
    ("maker", "same"),
    [
        (make.FieldFactory, {"name": "North"}),
        (make.SeedLotFactory, {"lot_number": "BW-26"}),
        (make.HarvestLotFactory, {"code": "SQ-1"}),
        (make.StationFactory, {"name": "Barn"}),
        (make.StationFactory, {"is_main": True}),
        (make.EquipmentFactory, {"name": "Drill"}),
        (make.CompostBatchFactory, {"name": "Spring"}),
        (make.FarmFigureFactory, {"attribute": "dry_matter"}),
        (make.OwnAssumptionFactory, {"key": "bloom_days"}),
    ],
    ids=lambda told: str(told),
)
def test_what_is_one_of_a_kind_cannot_stand_twice_unless_one_is_voided(maker, same):
    first = maker(**same)
    same |= {"farm": first.farm}
    if hasattr(first, "kind") and hasattr(first.kind, "pk"):
        same |= {"kind": first.kind}
    with pytest.raises(IntegrityError), transaction.atomic():
        maker(**same)
    first.voided_at, first.voided_by = make.WRITTEN_AT, first.written_by
    first.void_reason = "Twice"
    first.save()
    assert maker(**same).pk


@pytest.mark.django_db
def test_one_key_makes_one_record():
    first = make.TrainingFactory()
    with pytest.raises(IntegrityError), transaction.atomic():
        make.TrainingFactory(client_key=first.client_key)


@pytest.mark.django_db
def test_a_station_has_one_reading_a_day():
    first = make.WeatherDayFactory()
    with pytest.raises(IntegrityError), transaction.atomic():
        make.WeatherDayFactory(station=first.station, day=first.day)


@pytest.mark.django_db
def test_nobody_has_two_roles_on_one_farm():
    first = make.MembershipFactory()
    with pytest.raises(IntegrityError), transaction.atomic():
        make.MembershipFactory(farm=first.farm, user=first.user, role="crew")


def test_every_rule_of_the_tables_can_say_what_it_finds():
    """A percent sign left single ends in a traceback where a sentence belongs."""
    for model in apps.get_models():
        for rule in model._meta.constraints:
            assert rule.get_violation_error_message(), rule.name
