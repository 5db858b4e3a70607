"""Nutrients against Extension worked examples and label arithmetic."""

import numpy as np
import pytest

from reports.calc.nutrients import (
    K2O_PER_K,
    K_PER_K2O,
    P2O5_PER_P,
    P_PER_P2O5,
    Climate,
    NitrogenNote,
    OnTop,
    PhosphorusNote,
    nitrogen_note,
    nutrient_content,
    phosphorus_note,
    plant_available_n,
    product_for,
    released_by_day,
    rough_available_n,
)
from reports.calc.shapes.ledger import Residue

LB_AC = 0.45359237 / 4046.8564224  # kg/m² in one pound an acre, exact
TON_AC = 2000 * LB_AC
WORKED_IN = {"placement": Residue.WORKED_IN, "climate": Climate.COOL}
COOL_TOP = {"placement": Residue.ON_TOP, "climate": Climate.COOL}
WARM_TOP = {"placement": Residue.ON_TOP, "climate": Climate.WARM}


@pytest.mark.parametrize(
    ("percent", "pounds"),
    [(0.8, 0), (1.5, 0), (2.5, 17.5), (3.0, 26.25), (3.5, 35), (4.0, 40), (5.0, 40)],
)
def test_a_ton_of_dry_matter_frees_nitrogen_by_the_pacific_northwest_line(
    percent, pounds
):
    """PNW 636, Sullivan and Andrews 2012: none to 1.5 %, 35 lb at 3.5 %, 40 at most."""
    found = plant_available_n(
        nitrogen_share=percent / 100, mass_kg_m2=TON_AC, **WORKED_IN
    )
    assert found / LB_AC == pytest.approx(pounds)


def test_two_independent_methods_agree_on_the_north_carolina_example():
    """NC State: 6,534 lb/ac at 4 % hold 261 lb; half of it is 130.5 lb."""
    stand = {"nitrogen_share": 0.04, "mass_kg_m2": 6534 * LB_AC}
    held = nutrient_content(mass_kg=6534 * LB_AC, share=0.04) / LB_AC
    assert held == pytest.approx(261, abs=0.5)
    rough = rough_available_n(**stand, **WORKED_IN) / LB_AC
    assert rough == pytest.approx(130.5, abs=0.5)
    assert plant_available_n(**stand, **WORKED_IN) / LB_AC == pytest.approx(
        130.7, abs=0.05
    )


def test_buckwheat_at_two_per_cent_frees_22_pounds_an_acre():
    found = plant_available_n(
        nitrogen_share=0.020, mass_kg_m2=5000 * LB_AC, **WORKED_IN
    )
    assert found / LB_AC == pytest.approx(21.9, abs=0.05)


def test_a_cool_surface_frees_a_quarter_of_a_hundred_pounds():
    """Managing Cover Crops Profitably, third edition: divide by four."""
    stand = {"nitrogen_share": 0.025, "mass_kg_m2": 4000 * LB_AC}
    assert rough_available_n(**stand, **COOL_TOP) / LB_AC == pytest.approx(25)
    assert rough_available_n(**stand, **WARM_TOP) / LB_AC == pytest.approx(50)


def test_on_top_frees_less_and_least_where_it_is_cool():
    """NC State: 0.40 on top against 0.50 worked in; a quarter over a half if cool."""
    stand = {"nitrogen_share": 0.03, "mass_kg_m2": np.array([0.2, 0.4])}
    worked_in = plant_available_n(**stand, **WORKED_IN)
    assert plant_available_n(**stand, **WARM_TOP) / worked_in == pytest.approx(0.8)
    assert plant_available_n(**stand, **COOL_TOP) / worked_in == pytest.approx(0.5)
    own = plant_available_n(**stand, **COOL_TOP, on_top=OnTop(cool=0.6))
    assert own / worked_in == pytest.approx(0.6)


@pytest.mark.parametrize(
    ("share", "ratio", "note"),
    [
        (0.012, None, NitrogenNote.NONE_MAY_TIE_UP),
        (0.015, None, NitrogenNote.NONE_MAY_TIE_UP),
        (0.020, None, NitrogenNote.SOME_FREED),
        (0.020, 37, NitrogenNote.NONE_MAY_TIE_UP),
        (0.030, 11, NitrogenNote.SOME_FREED),
        (0.040, 11, NitrogenNote.MOST_FREED),
    ],
)
def test_straw_may_tie_up_nitrogen_and_vetch_does_not(share, ratio, note):
    """NRCS carbon to nitrogen table: rye in flower 37, hairy vetch 11, ideal 24."""
    assert nitrogen_note(nitrogen_share=share, carbon_nitrogen=ratio) is note


def test_nitrogen_is_freed_over_six_weeks_and_then_no_more():
    """PNW 636: most of it 4 to 6 weeks after the kill."""
    found = released_by_day(total_kg_m2=1.0, days=[0, 28, 42, 200])
    assert found == pytest.approx([0, 2 / 3, 1, 1])
    assert released_by_day(total_kg_m2=1.0, days=28, release_d=28) == 1


def test_sixty_pounds_of_30_4_4_hold_18_of_nitrogen_and_little_else():
    """University of Minnesota and Virginia Tech SPES-201, label arithmetic."""
    held = [nutrient_content(mass_kg=60.0, share=share) for share in (0.30, 0.04, 0.04)]
    assert held == pytest.approx([18, 2.4, 2.4])
    assert held[1] * P_PER_P2O5 == pytest.approx(1.05, abs=0.005)
    assert held[2] * K_PER_K2O == pytest.approx(1.99, abs=0.005)


@pytest.mark.parametrize(
    ("factor", "oxide", "element"), [(P_PER_P2O5, 20, 8.7), (K_PER_K2O, 60, 49.8)]
)
def test_an_oxide_on_the_label_is_less_of_the_element(factor, oxide, element):
    """SPES-201: 20 % P2O5 is 8.7 % P and 60 % K2O is 49.8 % K."""
    assert oxide * factor == pytest.approx(element, abs=0.05)


@pytest.mark.parametrize(
    ("there", "back"), [(P_PER_P2O5, P2O5_PER_P), (K_PER_K2O, K2O_PER_K)]
)
def test_oxide_and_element_turn_into_each_other_as_printed(there, back):
    assert there * back == pytest.approx(1, abs=1e-3)


def test_buckwheat_at_its_threshold_holds_33_pounds_of_phosphate_an_acre():
    """Arcand et al. 2010: freed only above 2.9 g/kg."""
    held = nutrient_content(mass_kg=5000.0, share=0.0029)
    assert held == pytest.approx(14.5)
    assert held * P2O5_PER_P == pytest.approx(33.2, abs=0.05)


@pytest.mark.parametrize(
    ("share", "note"),
    [
        (None, PhosphorusNote.UNKNOWN),
        (0.0029, PhosphorusNote.HELD),
        (0.0030, PhosphorusNote.MAY_BE_FREED),
    ],
)
def test_no_phosphorus_gain_is_told_for_buckwheat_at_or_below_its_threshold(
    share, note
):
    assert phosphorus_note(phosphorus_share=share) is note


@pytest.mark.parametrize(("share", "pounds"), [(0.20, 5.0), (0.21, 4.76)])
def test_a_pound_of_nitrogen_takes_five_pounds_of_20_0_0(share, pounds):
    """Louisiana State (20-0-0) and Texas A&M (21-0-0), a pound on 1,000 ft²."""
    assert product_for(nutrient_kg=1.0, share=share) == pytest.approx(pounds, abs=0.005)


def test_figures_outside_their_range_are_refused():
    for wrong in (
        {"nitrogen_share": 3.0},
        {"nitrogen_share": -0.01},
        {"mass_kg_m2": -1.0},
        {"placement": Residue.GRAZED},
    ):
        good = {"nitrogen_share": 0.03, "mass_kg_m2": 0.5, **WORKED_IN}
        for rule in (plant_available_n, rough_available_n):
            with pytest.raises(ValueError, match="nitrogen|mass|residue"):
                rule(**{**good, **wrong})
    with pytest.raises(ValueError, match="carbon"):
        nitrogen_note(nitrogen_share=0.02, carbon_nitrogen=0)
    for days, release_d in [([-1], 42), ([1], 0)]:
        with pytest.raises(ValueError, match="range"):
            released_by_day(total_kg_m2=1.0, days=days, release_d=release_d)
    with pytest.raises(ValueError, match="phosphorus"):
        phosphorus_note(phosphorus_share=0.29)
    for share in (-0.1, 1.1):
        with pytest.raises(ValueError, match="share"):
            nutrient_content(mass_kg=1.0, share=share)
    with pytest.raises(ValueError, match="share"):
        product_for(nutrient_kg=1.0, share=0.0)
