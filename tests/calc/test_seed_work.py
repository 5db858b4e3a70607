"""Seed at work: calibration, headlands, fills and mixes, against published examples."""

import pytest

from reports.calc.seed import (
    after_headlands,
    caught_rate,
    fills,
    inoculant_kg,
    mix_by_weight,
    row_in_area,
    run_for,
    seed_weight,
    spread_rate,
    with_overage,
)
from tests.calc.builders import ACRE_M2, LB_AC

LB = 0.45359237
FT = 0.3048
FT2 = FT**2


def test_a_twentieth_of_an_acre_is_driven_in_145_feet_by_a_fifteen_foot_drill():
    """Southeast Farm Press: 24 rows of 7.5 in, 1/20 acre, 145.2 ft."""
    width = 24 * 7.5 / 12 * FT
    assert run_for(area_m2=ACRE_M2 / 20, width_m=width) / FT == pytest.approx(
        145.2, abs=0.05
    )


def test_a_catch_of_26_grams_in_eight_rows_over_twenty_feet_is_25_pounds_an_acre():
    """SoilHealthLabs, How to Calibrate a Grain Drill, part five: 100 sq ft at 25 lb/ac.

    Its 100 sq ft are one row of 0.625 ft behind a tire of 8 ft for 20 turns; eight rows
    over 20 ft are the same ground. 26.03 g with 453.59 g to the pound.
    """
    found = caught_rate(
        caught_kg=0.02603, row_spacing_m=0.625 * FT, distance_m=20 * FT, rows=8
    )
    assert found / LB_AC == pytest.approx(25, abs=0.01)


@pytest.mark.parametrize(
    ("inches", "grams"), [(6, 0.78), (7, 0.91), (7.5, 0.98), (8, 1.04)]
)
def test_these_grams_from_150_feet_of_one_row_are_a_pound_an_acre(inches, grams):
    """University of Kentucky, in No-Till Farmer, 5 Easy Steps to Calibrating Your
    No-Till Drill, chart "Grams per row": grams from 150 ft of row for each lb/ac."""
    found = caught_rate(
        caught_kg=grams / 1000, row_spacing_m=inches / 12 * FT, distance_m=150 * FT
    )
    assert found / LB_AC == pytest.approx(1, abs=0.01)


def test_seven_inch_rows_hold_twenty_inches_of_row_in_a_square_foot():
    """University of Kentucky: 20.6 in of row to the square foot."""
    found = row_in_area(area_m2=FT2, row_spacing_m=7 / 12 * FT)
    assert found / FT * 12 == pytest.approx(20.6, abs=0.05)


def test_five_pounds_on_ten_by_a_hundred_feet_hold_a_pound_of_nitrogen():
    """LSU AgCenter: 1 lb N on 1,000 sq ft takes 5 lb of 20-0-0."""
    rate = spread_rate(spread_kg=5 * LB, area_m2=1000 * FT2)
    nitrogen = seed_weight(rate_kg_m2=rate * 0.20, area_m2=1000 * FT2)
    assert nitrogen / LB == pytest.approx(1)


def test_a_pound_of_nitrogen_takes_four_and_three_quarter_pounds_of_21_0_0():
    """Texas A&M: 4.76 lb of 21-0-0 on 1,000 sq ft."""
    rate = spread_rate(spread_kg=4.76 * LB, area_m2=1000 * FT2)
    assert rate * 0.21 * 1000 * FT2 / LB == pytest.approx(1, abs=0.001)


def test_half_a_pound_on_fifty_square_feet_spreads_ten_on_a_thousand():
    """Texas A&M: 0.5 lb on 50 sq ft is 10 lb/1,000 sq ft."""
    rate = spread_rate(spread_kg=0.5 * LB, area_m2=50 * FT2)
    assert rate * 1000 * FT2 / LB == pytest.approx(10)


def test_a_catch_and_the_rate_it_was_reckoned_for_are_one_another():
    caught = 40 * LB_AC * 0.19 * 60 * 3
    found = caught_rate(caught_kg=caught, row_spacing_m=0.19, distance_m=60, rows=3)
    assert found == pytest.approx(40 * LB_AC)


def test_a_mix_by_weight_keeps_its_parts_and_its_rate():
    """Cornell rye with vetch: 70 lb rye and 20 lb vetch an acre."""
    rates = mix_by_weight(rate_kg_m2=90 * LB_AC, weights=[70, 20])
    assert [rate / LB_AC for rate in rates] == pytest.approx([70, 20])


def test_headlands_at_both_ends_are_taken_off_the_length():
    assert after_headlands(length_m=100, width_m=30, headland_m=10) == 2400
    assert after_headlands(length_m=100, width_m=30, headland_m=10, ends=1) == 2700
    assert after_headlands(length_m=100, width_m=30, headland_m=0) == 3000
    assert after_headlands(length_m=100, width_m=30, headland_m=60) == 0


def test_fills_are_even_and_a_full_hopper_is_one_fill():
    assert fills(seed_kg=100.0, hopper_kg=100.0) == (1, 100.0)
    assert fills(seed_kg=0.1 * 3, hopper_kg=0.3) == (1, pytest.approx(0.3))
    count, each = fills(seed_kg=101.0, hopper_kg=100.0)
    assert (count, each) == (2, 50.5)


def test_some_to_spare_and_an_inoculant_by_its_label():
    assert with_overage(seed_kg=40.0, overage=0.1) == pytest.approx(44.0)
    assert with_overage(seed_kg=0.0, overage=0.1) == 0.0
    assert inoculant_kg(seed_kg=100.0, label_kg_per_kg=0.005) == pytest.approx(0.5)


@pytest.mark.parametrize(
    ("rule", "told"),
    [
        (mix_by_weight, {"rate_kg_m2": 1.0, "weights": [0, 0]}),
        (mix_by_weight, {"rate_kg_m2": 0.0, "weights": [1]}),
        (after_headlands, {"length_m": 0, "width_m": 1, "headland_m": 0}),
        (after_headlands, {"length_m": 1, "width_m": 1, "headland_m": -1}),
        (after_headlands, {"length_m": 1, "width_m": 1, "headland_m": 0, "ends": 3}),
        (with_overage, {"seed_kg": -1, "overage": 0}),
        (with_overage, {"seed_kg": 1, "overage": 1.1}),
        (fills, {"seed_kg": 0, "hopper_kg": 1}),
        (inoculant_kg, {"seed_kg": 1, "label_kg_per_kg": 0}),
        (caught_rate, {"caught_kg": -1, "row_spacing_m": 1, "distance_m": 1}),
        (caught_rate, {"caught_kg": 1, "row_spacing_m": 1, "distance_m": 1, "rows": 0}),
        (spread_rate, {"spread_kg": 1, "area_m2": 0}),
        (run_for, {"area_m2": 1, "width_m": 0}),
        (row_in_area, {"area_m2": 0, "row_spacing_m": 1}),
    ],
)
def test_what_cannot_be_is_refused(rule, told):
    with pytest.raises(ValueError, match="above|below|outside|range"):
        rule(**told)
