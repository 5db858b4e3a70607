"""Measures written, and read back."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from farm import units
from farm.units import System, Trouble, UnitError


@pytest.mark.parametrize(
    ("written", "expected"),
    [
        (units.write_area(120 * 0.09290304, System.US), "120 sq ft"),
        (units.write_area(4046.8564224, System.US), "1 ac"),
        (units.write_area(1.5 * 4046.8564224, System.US), "1.5 ac"),
        (units.write_area(0.1 * 4046.8564224, System.US), "0.1 ac"),
        (units.write_area(404, System.US), "4,349 sq ft"),
        (units.write_area(12.346 * 4046.8564224, System.US), "12.3 ac"),
        (units.write_area(1234.56 * 4046.8564224, System.US), "1,235 ac"),
        (units.write_area(36, System.METRIC), "36 m²"),
        (units.write_area(6000, System.METRIC), "0.6 ha"),
        (units.write_area(12_345_678, System.METRIC), "1235 ha"),
        (units.write_mass(22.6796185, System.US), "50 lb"),
        (units.write_mass(0.1, System.US), "3.53 oz"),
        (units.write_mass(0.453592, System.US), "1 lb"),
        (units.write_mass(1000, System.US), "2,205 lb"),
        (units.write_mass(0.00000001, System.METRIC), "0.00001 g"),
        (units.write_mass(0, System.US), "0 lb"),
        (units.write_mass(0.45359236999999994, System.US), "1 lb"),
        (units.write_mass(-0.0, System.METRIC), "0 kg"),
        (units.write_rate(0.0056, System.US), "50 lb/ac"),
        (units.write_rate(0.0056, System.METRIC), "56 kg/ha"),
        (units.write_rate(0.0056, System.METRIC, bed=True), "5.6 g/m²"),
        (units.write_rate(0.009154552, System.US, bed=True), "3 oz/100 sq ft"),
        (units.write_length(9.144, System.US), "30 ft"),
        (units.write_length(0.762, System.US), "2.5 ft"),
        (units.write_length(0.1905, System.US), "7.5 in"),
        (units.write_length(0.19, System.METRIC), "19 cm"),
        (units.write_depth(0.0127, System.US), "0.5 in"),
        (units.write_depth(0.0127, System.METRIC), "1.27 cm"),
        (units.write_temp(-2.2, System.US), "28 °F"),
        (units.write_temp(-0.04, System.METRIC), "0 °C"),
        (units.write_temp(-17.8, System.US), "0 °F"),
        (units.write_temp(-2.25, System.METRIC), "-2.3 °C"),
        (units.write_rain(25.4, System.US), "1 in"),
        (units.write_rain(0.254, System.US), "0.01 in"),
        (units.write_rain(12.7, System.METRIC), "12.7 mm"),
        # Nichols et al. 2020: 5.04 Mg/ha is 4497 lb/ac
        (units.write_density(0.504, System.US), "4,497 lb/ac"),
        (units.write_density(0.504, System.METRIC), "5.04 t/ha"),
        (units.write_volume(3.785411784, System.US), "1,000 gal"),
        (units.write_volume(0.001, System.METRIC), "1 L"),
        (units.write_count_per_area(322.917, System.US), "30 per sq ft"),
        (units.write_count_per_area(300, System.METRIC), "300 per m²"),
    ],
)
def test_a_measure_is_written_in_figures_a_grower_would_say(written, expected):
    assert str(written) == expected


def test_only_a_finite_number_is_written():
    for value in (math.nan, math.inf):
        with pytest.raises(ValueError, match="finite"):
            units.write_area(value, System.US)
        with pytest.raises(ValueError, match="finite"):
            units.write_temp(value, System.METRIC)


WRITERS = [
    (units.write_area, units.parse_area, 1e-4, 1e9),
    (units.write_length, units.parse_length, 1e-3, 1e5),
    (units.write_depth, units.parse_depth, 1e-4, 2.9),
    (units.write_mass, units.parse_mass, 1e-6, 1e8),
    (units.write_rate, units.parse_rate, 1e-7, 9e2),
    (units.write_density, units.parse_rate, 1e-6, 9e2),
    (units.write_volume, units.parse_volume, 1e-6, 9e6),
    (units.write_count_per_area, units.parse_count_per_area, 1e-3, 9e5),
]


@pytest.mark.parametrize(("write", "parse", "least", "most"), WRITERS)
@pytest.mark.parametrize("system", list(System))
@given(share=st.floats(0, 1))
def test_what_is_written_is_read_back_within_half_a_figure(
    write, parse, least, most, system, share
):
    value = least * (most / least) ** share
    assert parse(str(write(value, system))) == pytest.approx(value, rel=0.00502)


@pytest.mark.parametrize("write", [row[0] for row in WRITERS])
@given(
    value=st.floats(
        allow_nan=False, allow_infinity=False, max_value=1e300, min_value=-1e300
    )
)
def test_no_number_is_written_as_a_power_of_ten_or_a_minus_zero(write, value):
    number = write(value, System.METRIC).number
    assert set(number) <= set("-0123456789.")
    assert number != "-0"


@given(st.floats(-90, 60))
def test_a_written_temperature_is_read_back_to_a_tenth_of_a_degree(temp_c):
    for system in System:
        back = units.parse_temp(str(units.write_temp(temp_c, system)))
        assert back == pytest.approx(temp_c, abs=0.0501)


@given(st.floats(0, 1900))
def test_written_rain_is_read_back_to_a_hundredth_of_an_inch(rain_mm):
    for system in System:
        back = units.parse_rain(str(units.write_rain(rain_mm, system)))
        assert back == pytest.approx(rain_mm, abs=0.128)


PARSERS = [
    units.parse_area,
    units.parse_length,
    units.parse_depth,
    units.parse_mass,
    units.parse_rate,
    units.parse_temp,
    units.parse_rain,
    units.parse_volume,
    units.parse_count_per_area,
]


SCRAPS = st.lists(
    st.sampled_from(
        [
            "1",
            "0",
            "2",
            "1/2",
            "½",
            "1,200",
            "1.5",
            "-",
            " ",
            "/",
            "x",
            "per",
            "ft",
            "ac",
            "lb",
            "°F",
            "'",
            '"',
            "m²",
            "²",
            "in",
            ".",
            ",",
            "kg",
            "\u00a0",
            "por",
        ]
    ),
    max_size=9,
).map("".join)


@given(st.one_of(st.text(max_size=40), SCRAPS))
def test_any_text_is_either_read_or_refused_with_a_sentence(text):
    for parse in PARSERS:
        try:
            assert math.isfinite(parse(text))
        except UnitError as error:
            assert isinstance(error.reason, Trouble)
            assert str(error).endswith((".", '".'))
