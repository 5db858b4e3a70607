"""The one door to the tables: what crosses it, and in how many queries."""

import datetime as dt
import json

import pytest
from django.conf import settings

from farm.units import M2_PER_ACRE
from reports.calc.shapes.basics import Span
from reports.ledger import season_ledger
from reports.ledger.assumptions import own_assumptions
from reports.ledger.figures import to_si
from reports.papers.season import season_paper
from tests.factories import FieldFactory, OwnAssumptionFactory, PlantingFactory

YEAR = 2026
SEASON = Span(dt.date(YEAR, 1, 1), dt.date(YEAR, 12, 31))
TODAY = dt.date(2027, 1, 15)


def test_every_unit_of_the_catalogue_can_be_turned_into_the_workshops_own():
    told = json.loads((settings.BASE_DIR / "fixtures" / "crops.json").read_text())
    units = {row["unit"] for kind in told["kinds"] for row in kind["figures"]}
    assert all(isinstance(to_si(1.0, unit), float) for unit in units)


def test_a_printed_rate_of_fifty_pounds_an_acre_is_56_kilograms_a_hectare():
    # GNU units 2.22: 1 lb/acre = 1.12085115619446 kg/ha.
    assert to_si(50, "lb/ac") == pytest.approx(50 * 1.12085115619446 / 10_000)


@pytest.mark.django_db
def test_land_told_under_its_beds_is_counted_once_in_the_farms_total(world):
    whole = FieldFactory(farm=world.farm, name="Whole", area_m2=2 * M2_PER_ACRE)
    before = season_paper(world.farm, YEAR, today=TODAY)["page"].totals.area_m2
    for n in (1, 2):
        FieldFactory(
            farm=world.farm, name=f"Half {n}", parent=whole, area_m2=M2_PER_ACRE
        )
    after = season_paper(world.farm, YEAR, today=TODAY)["page"].totals.area_m2
    assert after == pytest.approx(before)


@pytest.mark.django_db
def test_a_field_all_in_parts_is_left_to_them_unless_something_grew_on_it(world):
    whole = FieldFactory(farm=world.farm, name="Whole", area_m2=M2_PER_ACRE)
    FieldFactory(farm=world.farm, name="Part", parent=whole, area_m2=M2_PER_ACRE)
    names = {field.name for field in season_ledger(world.farm, SEASON).fields}
    assert "Part" in names
    assert "Whole" not in names
    PlantingFactory(farm=world.farm, field=whole, sown_on=dt.date(YEAR, 6, 1))
    names = {field.name for field in season_ledger(world.farm, SEASON).fields}
    assert "Whole" in names


@pytest.mark.django_db
def test_an_assumption_of_the_farms_own_is_used_and_one_out_of_range_is_not(world):
    OwnAssumptionFactory(farm=world.farm, key="emergence_days", value=5, low=3, high=21)
    OwnAssumptionFactory(farm=world.farm, key="closed_cover", value=90, low=0, high=100)
    found = own_assumptions(world.farm)
    assert found["emergence_days"] == 5
    assert found["closed_cover"] == pytest.approx(0.80)


@pytest.mark.django_db
def test_a_planting_over_new_year_is_in_both_seasons(world):
    sown = dt.date(YEAR - 1, 9, 20)
    planting = PlantingFactory(
        farm=world.farm, field=world.ours["fields"], sown_on=sown
    )
    for year in (YEAR - 1, YEAR):
        season = Span(dt.date(year, 1, 1), dt.date(year, 12, 31))
        fields = season_ledger(world.farm, season).fields
        found = {one.id for field in fields for one in field.plantings}
        assert planting.pk in found
