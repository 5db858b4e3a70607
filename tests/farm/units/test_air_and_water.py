"""Temperatures, rain and volumes as growers write them."""

import pytest

from farm import units
from farm.units import Trouble, UnitError
from tests.farm.units.factors import (
    EXACT,
)


@pytest.mark.parametrize(
    ("text", "temp_c"),
    [
        ("50 F", 10),
        ("50°F", 10),
        ("50 ℉", 10),
        ("50 degrees Fahrenheit", 10),
        ("10 ºC", 10),
        ("10 grados centígrados", 10),
        ("−5 °C", -5),
        ("-40 F", -40),
        ("28.4 f", -2),
        ("0 C", 0),
    ],
)
def test_a_temperature_is_read_in_celsius(text, temp_c):
    assert units.parse_temp(text) == pytest.approx(temp_c, abs=1e-12)


@pytest.mark.parametrize(
    ("text", "reason"),
    [
        ("50", Trouble.NO_UNIT),
        ("50°", Trouble.NO_UNIT),
        ("50 K", Trouble.UNKNOWN_UNIT),
        ("500 C", Trouble.TOO_LARGE),
        ("50 60 F", Trouble.NOT_UNDERSTOOD),
    ],
)
def test_a_temperature_that_cannot_be_read_says_why(text, reason):
    with pytest.raises(UnitError) as caught:
        units.parse_temp(text)
    assert caught.value.reason is reason


@pytest.mark.parametrize(
    ("text", "rain_mm"),
    [("1 in", 25.4), ('0.05"', 1.27), ("12 mm", 12), ("1,2 cm", 12), ("0 mm", 0)],
)
def test_rain_is_read_in_millimetres(text, rain_mm):
    assert units.parse_rain(text) == pytest.approx(rain_mm, rel=EXACT)


def test_more_rain_than_ever_fell_in_a_day_is_refused():
    with pytest.raises(UnitError) as caught:
        units.parse_rain("90 in")
    assert caught.value.reason is Trouble.TOO_LARGE


@pytest.mark.parametrize(
    ("text", "litres"),
    [
        ("1 gal", 3.785411784),
        ("2 qt", 1.892705892),
        ("4 fl oz", 0.11829411825),
        ("5 L", 5),
        ("3 cu yd", 2293.664573952),
        ("3 yd3", 2293.664573952),
        ("1 gal 2 qt", 5.678117676),
    ],
)
def test_a_volume_is_read_in_cubic_metres(text, litres):
    assert units.parse_volume(text) * 1000 == pytest.approx(litres, rel=EXACT)
