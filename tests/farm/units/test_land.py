"""Areas, lengths and depths as growers write them."""

import pytest

from farm import units
from farm.units import Trouble, UnitError
from tests.farm.units.factors import (
    EXACT,
)


@pytest.mark.parametrize(
    ("text", "area_m2"),
    [
        ("1.5 ac", 6070.2846336),
        ("0.25 acre", 1011.7141056),
        ("½ acre", 2023.4282112),
        ("1½ ac", 6070.2846336),
        ("1/2 ac", 2023.4282112),
        ("1 1/2 ac", 6070.2846336),
        ("1-1/2 acres", 6070.2846336),
        ("1.5\u00a0acres", 6070.2846336),
        ("0,6 ha", 6000),
        ("0.6 hectáreas", 6000),
        ("2 HECTAREAS", 20000),
        ("900 sq ft", 900 * 0.09290304),
        ("900 ft2", 900 * 0.09290304),
        ("900 ft²", 900 * 0.09290304),
        ("900 ft^2", 900 * 0.09290304),
        ("900 sq. ft.", 900 * 0.09290304),
        ("900 pies cuadrados", 900 * 0.09290304),
        ("1,200 sq ft", 1200 * 0.09290304),
        ("1,200.5 m2", 1200.5),
        ("1.200,5 m2", 1200.5),
        ("1 200 m²", 1200),
        ("1.200.000 m2", 1_200_000),
        ("50 metros cuadrados", 50),
        ("30 x 4 ft", 120 * 0.09290304),
        ("30x4ft", 120 * 0.09290304),
        ("30 ft × 4 ft", 120 * 0.09290304),
        ("30' x 4'", 120 * 0.09290304),
        ("30' x 48\"", 120 * 0.09290304),
        ("30′ × 4′", 120 * 0.09290304),
        ("4 x 16 ft", 64 * 0.09290304),
        ("4 por 16 pies", 64 * 0.09290304),
        ("100 ft by 30 in", 250 * 0.09290304),
        ("10 ft 6 in x 4 ft", 42 * 0.09290304),
        ("30 m x 1.2 m", 36),
        ("30 m x 1,2 m", 36),
        ("1 ac 100 sq ft", 4046.8564224 + 9.290304),
    ],
)
def test_an_area_is_read_as_growers_write_it(text, area_m2):
    assert units.parse_area(text) == pytest.approx(area_m2, rel=EXACT)


def test_a_bed_of_thirty_by_four_feet_is_eleven_square_metres():
    assert units.parse_area("30 x 4 ft") == pytest.approx(11.1483648, rel=EXACT)


@pytest.mark.parametrize(
    ("text", "default_unit", "area_m2"),
    [
        ("1.5", "ac", 6070.2846336),
        ("1/2", "ac", 2023.4282112),
        ("30 x 4", "sq ft", 120 * 0.09290304),
        ("30 x 1.2", "m²", 36),
        ("2 ha", "ac", 20000),
    ],
)
def test_an_area_without_a_unit_takes_the_one_the_form_shows(
    text, default_unit, area_m2
):
    area = units.parse_area(text, default_unit=default_unit)
    assert area == pytest.approx(area_m2, rel=EXACT)


@pytest.mark.parametrize(
    ("text", "reason"),
    [
        ("", Trouble.EMPTY),
        (" \u00a0 ", Trouble.EMPTY),
        ("acres", Trouble.NO_NUMBER),
        ("1/0 ac", Trouble.NO_NUMBER),
        ("1.5", Trouble.NO_UNIT),
        ("30 x 4", Trouble.NO_UNIT),
        ("100 ft x 30", Trouble.NO_UNIT),
        ("30 x 5 ft 6 in", Trouble.NO_UNIT),
        ("1.5 acrez", Trouble.UNKNOWN_UNIT),
        ("30 m", Trouble.UNKNOWN_UNIT),
        ("1.5 lb", Trouble.UNKNOWN_UNIT),
        ("30 x 4 ac", Trouble.UNKNOWN_UNIT),
        ("-3 ac", Trouble.NOT_POSITIVE),
        ("0 ac", Trouble.NOT_POSITIVE),
        ("0 x 4 ft", Trouble.NOT_POSITIVE),
        ("-3 x -4 ft", Trouble.NOT_POSITIVE),
        ("1,23,4 ac", Trouble.AMBIGUOUS_NUMBER),
        ("1,200,5 ac", Trouble.AMBIGUOUS_NUMBER),
        ("1.2.3 ac", Trouble.AMBIGUOUS_NUMBER),
        ("12,34.5 ac", Trouble.AMBIGUOUS_NUMBER),
        ("1.200,5,3 ac", Trouble.AMBIGUOUS_NUMBER),
        ("10-12 ac", Trouble.NOT_UNDERSTOOD),
        ("3 4 ac", Trouble.NOT_UNDERSTOOD),
        ("about 3 ac", Trouble.NOT_UNDERSTOOD),
        ("3 ac 4 ac", Trouble.NOT_UNDERSTOOD),
        ("3 ac -40 sq ft", Trouble.NOT_UNDERSTOOD),
        ("2 x 3 x 4 ft", Trouble.NOT_UNDERSTOOD),
        ("1e5 m2", Trouble.UNKNOWN_UNIT),
        ("99999999999 ac", Trouble.TOO_LARGE),
        ("9" * 90 + " ac", Trouble.TOO_LONG),
    ],
)
def test_an_area_that_cannot_be_read_says_why(text, reason):
    with pytest.raises(UnitError) as caught:
        units.parse_area(text)
    assert caught.value.reason is reason


def test_an_unknown_unit_names_what_was_understood_and_what_would_do():
    with pytest.raises(UnitError) as caught:
        units.parse_area("1.5 acrez")
    assert (caught.value.understood, caught.value.rest) == ("1.5", "acrez")
    assert {"acres", "hectares", "sq ft", "sq m"} <= set(caught.value.known)
    assert str(caught.value).startswith('1.5 was understood, but not "acrez".')


def test_a_lone_comma_before_three_figures_parts_thousands_as_in_the_us():
    assert units.parse_mass("1,200 kg") == 1200
    assert units.parse_mass("0,200 kg") == 0.2
    assert units.parse_mass("1,25 kg") == 1.25
    assert units.parse_mass("1234,567 kg") == 1234.567
    assert units.parse_mass("1.250 kg") == 1.25


@pytest.mark.parametrize(
    ("text", "length_m"),
    [
        ("30 ft", 9.144),
        ("5 ft 6 in", 1.6764),
        ("5' 6\"", 1.6764),
        ("5'6''", 1.6764),
        ("10 yd", 9.144),
        ("1.2 m", 1.2),
        ("75 cm", 0.75),
        ("30 pies", 9.144),
        ("1 mi", 1609.344),
    ],
)
def test_a_length_is_read_in_metres(text, length_m):
    assert units.parse_length(text) == pytest.approx(length_m, rel=EXACT)


@pytest.mark.parametrize(
    ("text", "depth_m"),
    [
        ("1/4 in", 0.00635),
        ("2 cm", 0.02),
        ("15 mm", 0.015),
        ("0 in", 0),
        ('¾"', 0.01905),
    ],
)
def test_a_depth_is_read_in_metres_and_may_be_none(text, depth_m):
    assert units.parse_depth(text) == pytest.approx(depth_m, rel=EXACT)


@pytest.mark.parametrize(
    ("text", "reason"),
    [("-1 in", Trouble.NEGATIVE), ("4 m", Trouble.TOO_LARGE), ("2", Trouble.NO_UNIT)],
)
def test_a_depth_that_no_tool_reaches_is_refused(text, reason):
    with pytest.raises(UnitError) as caught:
        units.parse_depth(text)
    assert caught.value.reason is reason
