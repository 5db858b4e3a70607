"""Measures: factors against the GNU units and NIST values, reading and writing."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from farm import units
from farm.units import System, Trouble, UnitError, factors

EXACT = 1e-12

# GNU units 2.22 (`units -t -d 15`), an implementation independent of Python. Pound,
# gallon and bushel agree with NIST SP 811 (2008) appendix B; acre with 85 FR 62698.
GNU_UNITS = [
    (units.M2_PER_ACRE, 4046.8564224),
    (units.KG_PER_LB, 0.45359237),
    (units.KG_PER_OZ, 0.028349523125),
    (units.KG_PER_CWT, 100 * 0.45359237),
    (units.KG_PER_SHORT_TON, 907.18474),
    (units.M3_PER_US_BUSHEL, 35.23907016688e-3),
    (units.M3_PER_US_GALLON, 3.785411784e-3),
    (factors.M3_PER_US_QUART, 0.946352946e-3),
    (factors.M3_PER_US_PINT, 0.473176473e-3),
    (factors.M3_PER_US_FL_OZ, 29.5735295625e-6),
    (units.M3_PER_YD3, 0.764554857984),
    (factors.M3_PER_FT3, 0.028316846592),
    (factors.M2_PER_YD2, 0.83612736),
    (factors.M2_PER_IN2, 0.00064516),
    (factors.M_PER_MI, 1609.344),
    (units.M2_PER_HA / units.M2_PER_ACRE, 2.47105381467165),
    (units.KG_M2_PER_LB_AC / units.KG_M2_PER_KG_HA, 1.12085115619446),
    (units.KG_M2_PER_KG_HA / units.KG_M2_PER_LB_AC, 0.892179121619705),
    (units.KG_M2_PER_SHORT_TON_AC / units.KG_M2_PER_T_HA, 2.24170231238891),
    (units.KG_M2_PER_LB_1000FT2 / units.KG_M2_PER_KG_HA, 48.8242763638305),
    (units.KG_M2_PER_LB_1000FT2 / units.KG_M2_PER_LB_AC, 43.56),
    (units.M3_PER_US_GALLON * 1000 / units.M2_PER_ACRE * 1e4, 9.35395622895623),
    (units.M3_PER_US_BUSHEL * 1000 / units.M2_PER_ACRE * 1e4, 87.0776387613509),
    (units.c_from_f(28.0), -2.22222222222223),
]


@pytest.mark.parametrize(("ours", "gnu"), GNU_UNITS)
def test_each_factor_is_the_one_gnu_units_gives(ours, gnu):
    assert ours == pytest.approx(gnu, rel=2e-14 if gnu < 0 else EXACT)


def test_the_acre_is_not_the_survey_acre():
    ratio = 4046.872609874252 / units.M2_PER_ACRE
    assert ratio == pytest.approx(1.000004, abs=1e-9)


def test_water_freezes_at_32_and_boils_at_212():
    assert units.c_from_f(32) == 0
    assert units.c_from_f(212) == pytest.approx(100, rel=EXACT)
    assert units.f_from_c(-40) == -40


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
        (units.write_mass(1000, System.US), "2,205 lb"),
        (units.write_mass(0.00000001, System.METRIC), "0.00001 g"),
        (units.write_mass(0, System.US), "0 oz"),
        (units.write_mass(-0.0, System.METRIC), "0 g"),
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
