"""Weed suppression and plant-back against published trials and handbooks."""

import numpy as np
import pytest

from reports.calc.residue import (
    LEAF_FACTOR,
    decomposition_days,
    share_left,
    step_running_log,
)
from reports.calc.shapes.ledger import Group, Residue
from reports.calc.weeds import (
    Evidence,
    Lines,
    NextCrop,
    Strength,
    Wait,
    Waits,
    biomass_reduction,
    last_day_at_least,
    mulch_strength,
    plant_back_days,
    reduction_evidence,
)


@pytest.mark.parametrize(
    ("mg_ha", "grass", "reduction"),
    [
        (5.0, True, 0.7488),
        (5.04, True, 0.750),
        (7.1, True, 1 - np.exp(-1.65911)),
        (3.5, False, 1 - np.exp(-0.312963)),
        (5.6, False, 0.446),
        (3.31, False, 0.25),
        (6.38, False, 0.50),
    ],
)
def test_weeds_shrink_by_the_regression_of_nichols_and_others(mg_ha, grass, reduction):
    """Nichols et al. 2020, 123 comparisons; cover biomass in Mg/ha at the kill."""
    found = biomass_reduction(mass_kg_m2=mg_ha / 10, grass=grass)
    assert found == pytest.approx(reduction, abs=5e-4)


@pytest.mark.parametrize(
    ("mg_ha", "grass"),
    [(0.9, True), (9.1, True), (0.9, False), (8.2, False), (1.1, False)],
)
def test_no_reduction_is_told_outside_the_masses_measured(mg_ha, grass):
    assert biomass_reduction(mass_kg_m2=mg_ha / 10, grass=grass) is None


def test_no_clear_reduction_is_claimed_for_covers_that_are_no_grass():
    """Nichols et al. 2020: the effect of non-grass covers was not significant."""
    assert reduction_evidence(grass=True) is Evidence.CLEAR
    assert reduction_evidence(grass=False) is Evidence.NOT_SIGNIFICANT


def test_mulch_is_strong_from_eight_tonnes_and_moderate_from_five():
    """Mirsky et al. 2013 for 8 Mg/ha of rye, Nichols et al. 2020 for 5 Mg/ha."""
    found = mulch_strength(
        mass_kg_m2=[0.8, 0.79, 0.5, 0.49, 0.49],
        cover=[0.98, 0.98, 0.9, 0.8, 0.79],
        buckwheat=False,
    )
    assert [Strength(value).name for value in found] == [
        "STRONG",
        "MODERATE",
        "MODERATE",
        "PARTIAL",
        "NONE",
    ]


def test_dead_buckwheat_is_never_better_than_partial():
    """Cornell Buckwheat Handbook: no weed control once the stand is killed."""
    found = mulch_strength(mass_kg_m2=[1.0, 0.3], cover=[0.99, 0.7], buckwheat=True)
    assert found.tolist() == [Strength.PARTIAL, Strength.NONE]


def test_a_farm_may_set_its_own_lines():
    own = Lines(strong_kg_m2=1.0, moderate_kg_m2=0.7, partial_cover=0.5)
    found = mulch_strength(
        mass_kg_m2=[0.9, 0.6], cover=[0.9, 0.6], buckwheat=False, lines=own
    )
    assert found.tolist() == [Strength.MODERATE, Strength.PARTIAL]


def mass_left(*, start_kg_m2, k_per_dd, leaf_share):
    """Return the mass by day at 18 to 30 °C with 12 mm every third day."""
    water = np.where(np.arange(215) % 3 == 0, 12.0, 0.0)
    weather = decomposition_days(
        tmin_c=np.full(215, 18.0), tmax_c=np.full(215, 30.0), water_mm=water
    )
    return start_kg_m2 * share_left(
        stem_log=step_running_log(dd=weather.surface, k_per_dd=k_per_dd),
        leaf_log=step_running_log(dd=weather.surface, k_per_dd=LEAF_FACTOR * k_per_dd),
        leaf_share=leaf_share,
        start=15,
        stop=np.arange(15, 216),
    )


@pytest.mark.parametrize(
    ("stand", "first_day_below"),
    [
        ({"start_kg_m2": 0.5604, "k_per_dd": 0.025, "leaf_share": 0.30}, 7),
        ({"start_kg_m2": 0.8000, "k_per_dd": 0.0133, "leaf_share": 0.35}, 50),
    ],
)
def test_a_mulch_rots_below_five_tonnes_in_a_warm_humid_summer(stand, first_day_below):
    mass = mass_left(**stand)
    strength = mulch_strength(
        mass_kg_m2=mass, cover=np.full(len(mass), 0.9), buckwheat=False
    )
    last = last_day_at_least(strength, Strength.MODERATE)
    assert last == first_day_below - 1


def test_a_mulch_that_never_was_strong_has_no_strong_day():
    assert last_day_at_least([2, 1, 0], Strength.STRONG) is None
    assert last_day_at_least([2, 1, 1], Strength.PARTIAL) == 2


@pytest.mark.parametrize(
    ("groups", "placement", "next_crop", "ratio", "wait"),
    [
        ([Group.BROADLEAF], "worked_in", "large_seed", None, Wait(7, 14, "HT2013")),
        ([Group.LEGUME], "worked_in", "transplant", 11, Wait(7, 14, "HT2013")),
        ([Group.GRASS], "worked_in", "transplant", None, Wait(14, 21, "ASSUMED")),
        (
            [Group.GRASS, Group.LEGUME],
            "worked_in",
            "large_seed",
            None,
            Wait(14, 21, "ASSUMED"),
        ),
        ([Group.GRASS], "worked_in", "transplant", 37, Wait(21, 28, "COMMON")),
        ([Group.BROADLEAF], "worked_in", "small_seed", None, Wait(21, 28, "COMMON")),
        ([Group.GRASS], "on_top", "large_seed", 37, Wait(14, 21, "ASSUMED")),
        ([Group.LEGUME], "on_top", "large_seed", None, Wait(7, 14, "ASSUMED")),
        ([Group.GRASS], "on_top", "transplant", 37, Wait(0, 7, "ASSUMED")),
        ([Group.GRASS], "on_top", "small_seed", None, None),
    ],
)
def test_the_next_crop_waits_by_stand_placement_and_seed(
    groups, placement, next_crop, ratio, wait
):
    """A week after buckwheat: Bjorkman and Shail 2013; three weeks: common practice."""
    found = plant_back_days(
        groups=groups,
        placement=Residue(placement),
        next_crop=NextCrop(next_crop),
        carbon_nitrogen=ratio,
    )
    assert found == wait


def test_a_farm_may_set_its_own_wait():
    found = plant_back_days(
        groups=[Group.BROADLEAF],
        placement=Residue.WORKED_IN,
        next_crop=NextCrop.LARGE_SEED,
        waits=Waits(young_d=10),
    )
    assert found == Wait(10, 17, "HT2013")


def test_masses_covers_and_stands_that_cannot_be_are_refused():
    with pytest.raises(ValueError, match="mass"):
        biomass_reduction(mass_kg_m2=-0.1, grass=True)
    for mass, cover in [([-0.1], [0.5]), ([np.nan], [0.5]), ([0.5], [1.1])]:
        with pytest.raises(ValueError, match="mass|cover"):
            mulch_strength(mass_kg_m2=mass, cover=cover, buckwheat=False)
    good = {
        "groups": [Group.GRASS],
        "placement": Residue.WORKED_IN,
        "next_crop": NextCrop.TRANSPLANT,
    }
    for wrong in (
        {"groups": []},
        {"placement": Residue.REMOVED},
        {"carbon_nitrogen": 0},
    ):
        with pytest.raises(ValueError, match="group|carbon"):
            plant_back_days(**{**good, **wrong})
