"""Masses, rates and seeds on land as growers write them."""

import pytest

from farm import units
from farm.units import Trouble, UnitError
from tests.farm.units.factors import (
    EXACT,
)


@pytest.mark.parametrize(
    ("text", "mass_kg"),
    [
        ("50 lb", 22.6796185),
        ("50 lbs.", 22.6796185),
        ("2 lb 3 oz", 0.99223331),
        ("2lb3oz", 0.99223331),
        ("8 oz", 0.226796185),
        ("250 g", 0.25),
        ("1,5 kilos", 1.5),
        ("1 ton", 907.18474),
        ("1 tonelada", 1000),
        ("1 t", 1000),
        ("2 libras", 0.90718474),
        ("1 cwt", 45.359237),
    ],
)
def test_a_mass_is_read_in_kilograms(text, mass_kg):
    assert units.parse_mass(text) == pytest.approx(mass_kg, rel=1e-8)


def test_a_mass_of_nothing_is_only_read_where_a_count_may_find_nothing():
    assert units.parse_mass("0 lb", zero_ok=True) == 0
    with pytest.raises(UnitError) as caught:
        units.parse_mass("0 lb")
    assert caught.value.reason is Trouble.NOT_POSITIVE


@pytest.mark.parametrize(
    ("text", "rate_kg_ha"),
    [
        ("50 lb/ac", 50 * 1.12085115619446),
        ("50 lb / ac", 50 * 1.12085115619446),
        ("1/2 lb/ac", 0.5 * 1.12085115619446),
        ("50 libras por acre", 50 * 1.12085115619446),
        ("1 ton/ac", 2241.70231238891),
        ("2 lb per 1000 sq ft", 2 * 48.8242763638305),
        ("2 lb por 1,000 pies cuadrados", 2 * 48.8242763638305),
        # GNU units 2.22: lb/(500 ft^2) and 3 oz/(100 ft^2) in kg/m^2
        ("1 lb/500 sq ft", 0.0097648552727661 * 1e4),
        ("3 oz/100 sq ft", 0.00915455181821822 * 1e4),
        ("3 oz/100ft2", 0.00915455181821822 * 1e4),
        ("56 kg/ha", 56),
        ("6 g/m2", 60),
        ("6 g/m²", 60),
    ],
)
def test_a_rate_is_read_as_mass_on_land(text, rate_kg_ha):
    assert units.parse_rate(text) * 1e4 == pytest.approx(rate_kg_ha, rel=EXACT)


def test_a_rate_without_a_unit_takes_the_one_the_form_shows():
    rate = units.parse_rate("50", default_unit="lb/ac")
    assert rate == pytest.approx(50 * units.KG_M2_PER_LB_AC, rel=EXACT)


@pytest.mark.parametrize(
    ("text", "reason"),
    [
        ("50 lb", Trouble.NO_AREA),
        ("50 lb/", Trouble.NO_AREA),
        ("50/ac", Trouble.NO_UNIT),
        ("/ac", Trouble.NO_NUMBER),
        ("50 lb/bed", Trouble.UNKNOWN_UNIT),
        ("50 lb/0 ac", Trouble.NOT_POSITIVE),
        ("0 lb/ac", Trouble.NOT_POSITIVE),
        ("2 bu/ac", Trouble.UNKNOWN_UNIT),
        ("5000 ton/sq ft", Trouble.TOO_LARGE),
    ],
)
def test_a_rate_that_cannot_be_read_says_why(text, reason):
    with pytest.raises(UnitError) as caught:
        units.parse_rate(text, default_unit="lb/ac")
    assert caught.value.reason is reason


@pytest.mark.parametrize(
    ("text", "count_m2"),
    [
        ("30 seeds/sq ft", 30 / 0.09290304),
        ("30 per sq ft", 30 / 0.09290304),
        ("30/sq ft", 30 / 0.09290304),
        ("300 semillas por m2", 300),
        ("30,000 plants/ac", 30000 / 4046.8564224),
    ],
)
def test_seeds_on_land_are_read_by_the_square_metre(text, count_m2):
    assert units.parse_count_per_area(text) == pytest.approx(count_m2, rel=EXACT)


def test_pounds_are_not_a_count_of_seeds():
    with pytest.raises(UnitError) as caught:
        units.parse_count_per_area("30 lb/ac")
    assert caught.value.reason is Trouble.UNKNOWN_UNIT
