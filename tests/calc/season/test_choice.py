"""Both ways with the residue, side by side."""

import math
from dataclasses import replace

import pytest

from reports.calc.nutrients import Climate
from reports.calc.shapes.basics import How
from reports.calc.shapes.choice import NoChoice, Reason
from reports.calc.shapes.ledger import (
    Residue,
    Sample,
)
from tests.calc.builders import (
    CLOVER,
    LB_AC,
    RYE,
    day,
    ended,
    planting,
)
from tests.calc.season.stands import (
    choice,
    heavy,
)


def test_buckwheat_at_bloom_halves_in_six_weeks_on_top_and_three_worked_in() -> None:
    # Synthetic summer: 43 days on top (31 to 61), 24 worked in (17 to 34).
    both = choice(heavy(ended(day(8, 14))))
    assert both.on_top.half_life_days == pytest.approx(43, abs=1)
    assert both.on_top.half_life_between == (
        pytest.approx(31, abs=1),
        pytest.approx(61, abs=1),
    )
    assert both.worked_in.half_life_days == pytest.approx(24, abs=1)


def test_buckwheat_on_top_is_below_five_megagrams_after_a_week() -> None:
    # Synthetic summer, 5.60 Mg/ha: below 5 Mg/ha after 7 days.
    curve = choice(heavy(ended(day(8, 14)))).on_top.curve
    assert curve[0].mass_likely_kg_m2 == pytest.approx(0.5604)
    assert curve[1].offset_days == 7
    assert curve[1].mass_likely_kg_m2 < 0.505


def test_worked_in_decays_faster_and_on_top_covers_longer() -> None:
    both = choice(heavy(ended(day(8, 14))))
    pairs = zip(both.on_top.curve[1:], both.worked_in.curve[1:], strict=True)
    for on_top, worked_in in pairs:
        assert worked_in.mass_likely_kg_m2 < on_top.mass_likely_kg_m2
        assert worked_in.cover_likely == 0 < on_top.cover_likely
    assert both.on_top.below_30_cover_on > both.worked_in.below_30_cover_on
    assert both.on_top.erosion_index_60_days < both.worked_in.erosion_index_60_days


def test_the_curve_keeps_its_range_and_only_falls() -> None:
    curve = choice(heavy(ended(day(8, 14)))).on_top.curve
    assert [point.offset_days for point in curve] == [0, 7, 14, 28, 42, 56, 84, 112]
    for point in curve:
        assert point.mass_kg_m2.low <= point.mass_likely_kg_m2 <= point.mass_kg_m2.high
        assert point.cover.low <= point.cover_likely <= point.cover.high
    masses = [point.mass_likely_kg_m2 for point in curve]
    assert masses == sorted(masses, reverse=True)


def test_the_way_taken_is_marked_and_the_reasons_are_told() -> None:
    both = choice(heavy(ended(day(8, 14), Residue.WORKED_IN)))
    assert (both.on_top.taken, both.worked_in.taken) == (False, True)
    assert set(both.reasons) >= {
        Reason.ON_TOP_COVERS_SOIL,
        Reason.ON_TOP_HOLDS_WEEDS_LONGER,
        Reason.WORKED_IN_RELEASES_SOONER,
        Reason.WORKED_IN_PLANTS_SOONER,
        Reason.BUCKWHEAT_MULCH_NEVER_BETTER_THAN_PARTIAL,
        Reason.THIN_EVIDENCE_DECAY,
    }
    assert Reason.HANDBOOK_MASS not in both.reasons


def test_a_week_after_working_buckwheat_in_the_next_crop_may_go_in() -> None:
    # Cornell handbook (CORN-HB-IDLE) and HT2013: one week.
    wait = choice(heavy(ended(day(8, 14)))).worked_in.plant_back
    assert wait.direct_large_seed == day(8, 21)
    assert wait.direct_small_seed == day(9, 4)


def test_rye_worked_in_waits_two_to_three_weeks() -> None:
    # CORN-RYE: two to three weeks.
    row = planting(
        day(9, 20, 2024),
        ended(day(5, 20)),
        kinds=[RYE],
        samples=(Sample(day(5, 19), (0.5,)),),
    )
    wait = choice(row).worked_in.plant_back
    assert (wait.direct_large_seed, wait.careful[1]) == (day(6, 3), day(6, 10))


def test_buckwheat_at_two_percent_frees_22_pounds_of_nitrogen_an_acre() -> None:
    # PNW 636 line on 5,000 lb/ac: 21.9 lb/ac at 2.0 %, worked in.
    sample = Sample(day(8, 14), (5000 * LB_AC,), nitrogen_share=0.02)
    row = planting(day(7, 10), ended(day(8, 14)), samples=(sample,))
    warm, cool = choice(row), choice(row, climate=Climate.COOL)
    freed = warm.worked_in.nitrogen_six_weeks_kg_m2
    assert freed.low / LB_AC == pytest.approx(21.9, abs=0.05)
    on_top = warm.on_top.nitrogen_six_weeks_kg_m2
    assert on_top.low == pytest.approx(freed.low * 0.8)
    cool_top = cool.on_top.nitrogen_six_weeks_kg_m2
    assert cool_top.low == pytest.approx(freed.low * 0.5)


def test_without_a_sample_the_handbook_range_is_shown_and_said() -> None:
    both = choice(planting(day(7, 10), ended(day(8, 14))))
    assert both.mass_how is How.HANDBOOK
    assert both.mass_kg_m2.low == pytest.approx(2000 * LB_AC)
    assert both.mass_kg_m2.high == pytest.approx(6000 * LB_AC)
    assert both.mass_likely_kg_m2 == pytest.approx(2500 * LB_AC)
    assert Reason.HANDBOOK_MASS in both.reasons


def test_a_sample_more_than_a_fortnight_old_is_not_used() -> None:
    old = (Sample(day(7, 30), (0.4,)),)
    both = choice(planting(day(7, 10), ended(day(8, 14)), samples=old))
    assert both.mass_how is How.HANDBOOK


def test_the_mean_of_the_frames_is_the_mass() -> None:
    frames = (Sample(day(8, 12), (0.3, 0.4, 0.5)),)
    both = choice(planting(day(7, 10), ended(day(8, 14)), samples=frames))
    error = 0.1 / math.sqrt(3)
    assert (both.mass_how, both.mass_likely_kg_m2) == (How.SAMPLED, pytest.approx(0.4))
    assert both.mass_kg_m2.high == pytest.approx(0.4 + error)


def test_an_unknown_mass_is_not_guessed() -> None:
    both = choice(planting(day(9, 1), ended(day(10, 20)), kinds=[RYE]))
    assert (both.on_top, both.worked_in) == (None, None)
    assert both.why_none is NoChoice.MASS_UNKNOWN


def test_a_kind_without_a_rate_is_not_compared() -> None:
    both = choice(planting(day(9, 1), ended(day(10, 20)), kinds=[CLOVER]))
    assert both.why_none is NoChoice.DECAY_UNKNOWN


def test_ripe_buckwheat_rots_slower_than_buckwheat_at_bloom() -> None:
    young = choice(heavy(ended(day(8, 14))))
    ripe = choice(
        replace(heavy(ended(day(9, 20))), samples=(Sample(day(9, 20), (0.5604,)),))
    )
    assert ripe.on_top.half_life_days > young.on_top.half_life_days
