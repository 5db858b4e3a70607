"""One farm, one season: days that add up, windows, residues and seed."""

import datetime as dt
import math
from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from reports.calc.assumptions import CHOICES, Assumptions
from reports.calc.nutrients import Climate
from reports.calc.shapes.basics import How, Span
from reports.calc.shapes.choice import NoChoice, Reason
from reports.calc.shapes.ledger import (
    End,
    Ending,
    Method,
    Observation,
    PlantingFacts,
    Purpose,
    Residue,
    Sample,
    Seen,
)
from reports.calc.shapes.season import (
    CoverDays,
    Doubt,
    Ground,
    NoWindow,
    StageName,
    TickKind,
    Verdict,
)
from reports.calc.sources import SOURCES
from tests.calc.builders import (
    ACRE_M2,
    BUCKWHEAT,
    CLOVER,
    LB_AC,
    LETTUCE,
    RYE,
    YEAR,
    day,
    ended,
    field,
    lot,
    one_field,
    one_planting,
    planting,
    season_of,
    summer,
)

HEAVY = (Sample(day(8, 14), (0.5604,)),)  # 5,000 lb of dry matter an acre


def total(cover: CoverDays) -> float:
    return cover.counted + cover.not_yet


def heavy(*ends: End) -> PlantingFacts:
    return planting(day(7, 10), *ends, samples=HEAVY)


# --- days add up -------------------------------------------------------------

DATES = st.dates(dt.date(2024, 6, 1), dt.date(2026, 3, 1))


@st.composite
def plantings(draw: st.DrawFn) -> PlantingFacts:
    sown = draw(DATES)
    area = draw(st.floats(1.0, 150.0))
    ends = tuple(
        ended(
            sown + dt.timedelta(draw(st.integers(0, 400))),
            draw(st.sampled_from(Residue)),
            area_m2=draw(st.floats(0.5, 150.0)),
            regrows=draw(st.booleans()),
        )
        for _ in range(draw(st.integers(0, 3)))
    )
    seen = tuple(
        Observation(
            sown + dt.timedelta(draw(st.integers(-5, 400))),
            draw(st.sampled_from(Seen)),
            canopy_share=draw(st.none() | st.floats(0, 1)),
            bloom_share=draw(st.none() | st.floats(0, 1)),
            ground_cover_share=draw(st.none() | st.floats(0, 1)),
        )
        for _ in range(draw(st.integers(0, 3)))
    )
    kinds = draw(st.sampled_from([(BUCKWHEAT,), (RYE,), (LETTUCE,), (RYE, CLOVER)]))
    return planting(
        draw(st.just(sown) | st.none()),
        *ends,
        kinds=kinds,
        area_m2=area,
        purpose=draw(st.sampled_from(Purpose)),
        method=draw(st.sampled_from(Method)),
        planned_on=sown,
        observations=seen,
        samples=draw(st.just(()) | st.just((Sample(sown, (0.4, 0.5)),))),
    )


@settings(max_examples=120, deadline=None)
@given(
    rows=st.lists(plantings(), max_size=4),
    today=st.dates(dt.date(2024, 12, 1), dt.date(2026, 3, 1)),
    with_weather=st.booleans(),
)
def test_the_days_of_a_field_always_add_up_to_the_season(
    rows: list[PlantingFacts], today: dt.date, with_weather: bool
) -> None:
    weather = summer() if with_weather else None
    one = one_field(*rows, today=today, weather=weather)
    cover = one.cover
    days = (cover.living, cover.cash, cover.residue, cover.bare, cover.not_yet)
    assert total(cover) == pytest.approx(YEAR.days)
    assert min(days) >= -1e-9
    assert cover.soil_cover_days <= cover.counted + 1e-9
    assert cover.days_at_least_30 <= cover.counted + 1e-9
    assert one.weed_days.low <= one.weed_days_likely + 1e-9
    assert one.weed_days_likely <= one.weed_days.high + 1e-9


@settings(max_examples=60, deadline=None)
@given(rows=st.lists(plantings(), max_size=4), today=DATES)
def test_the_segments_of_a_strip_fill_every_day_of_the_field_once(
    rows: list[PlantingFacts], today: dt.date
) -> None:
    filled = np.zeros(YEAR.days)
    for segment in one_field(*rows, today=today).strip.segments:
        first = (segment.first - YEAR.first).days
        filled[first : (segment.last - YEAR.first).days + 1] += segment.share
    assert filled == pytest.approx(np.ones(YEAR.days))


def test_an_empty_field_is_bare_all_year() -> None:
    cover = one_field().cover
    assert (cover.bare, cover.soil_cover_days, total(cover)) == (365, 0, 365)


def test_a_stand_lives_from_the_day_it_is_up_to_the_day_before_its_end() -> None:
    row = planting(day(7, 10), ended(day(8, 14), Residue.REMOVED))
    one = one_field(row)
    assert one.cover.living == 31  # up on 14 July, ended on 14 August
    assert one.plantings[0].alive == Span(day(7, 14), day(8, 13))


def test_a_cover_with_neither_end_nor_frost_still_lives() -> None:
    row = one_planting(planting(day(9, 1), kinds=[RYE]))
    assert row.alive is not None
    assert row.alive.last == day(2, 1, 2026)
    assert row.living_days == (YEAR.last - day(9, 8)).days + 1


def test_a_planting_on_half_the_field_counts_half_its_days() -> None:
    row = planting(day(7, 10), ended(day(8, 14), Residue.REMOVED), area_m2=50)
    assert one_field(row).cover.living == 15.5


def test_two_plantings_on_their_own_halves_add_up() -> None:
    half = planting(day(7, 10), ended(day(8, 14), Residue.REMOVED), area_m2=50)
    one = one_field(half, replace(half, id=2))
    assert one.cover.living == 31
    assert {segment.share for segment in one.strip.segments} == {0.5}


def test_a_nurse_crop_and_its_crop_count_the_ground_once() -> None:
    clover = planting(day(4, 10), ended(day(9, 1)), kinds=[CLOVER])
    nurse = planting(day(4, 10), ended(day(6, 20)), kinds=[RYE], purpose=Purpose.NURSE)
    cover = one_field(clover, nurse).cover
    assert cover.living == (day(9, 1) - day(4, 17)).days


def test_a_cover_under_a_cash_crop_counts_as_living() -> None:
    corn = planting(day(5, 1), ended(day(9, 1)), kinds=[LETTUCE], purpose=Purpose.CASH)
    clover = planting(day(6, 1), kinds=[CLOVER])
    cover = one_field(corn, clover).cover
    assert cover.cash == (day(6, 8) - day(5, 1)).days
    assert cover.living == (YEAR.last - day(6, 8)).days + 1


def test_a_stand_ended_in_two_parts_lives_on_in_the_second() -> None:
    first = ended(day(8, 1), Residue.REMOVED, area_m2=40)
    rest = ended(day(8, 11), Residue.REMOVED, area_m2=60)
    row = planting(day(7, 10), first, rest)
    assert one_field(row).cover.living == pytest.approx(18 + 10 * 0.6)
    assert one_planting(row).living_days == pytest.approx(18 + 10 * 0.6)


def test_what_an_end_left_over_still_lives() -> None:
    row = planting(day(7, 10), ended(day(8, 1), Residue.REMOVED, area_m2=40))
    alive = (YEAR.last - day(8, 1)).days + 1
    assert one_field(row).cover.living == pytest.approx(18 + alive * 0.6)


def test_a_planting_in_two_seasons_is_told_in_both_and_its_seed_once() -> None:
    row = planting(
        day(9, 1, 2024), ended(day(5, 1)), kinds=[RYE], seed_kg=2.0, seed_lot=lot(RYE)
    )
    before = Span(dt.date(2024, 1, 1), dt.date(2024, 12, 31))
    old, new = season_of(field(row), season=before), season_of(field(row))
    assert len(old.fields[0].plantings) == len(new.fields[0].plantings) == 1
    assert (
        old.fields[0].cover.living + new.fields[0].cover.living
        == (day(5, 1) - day(9, 8, 2024)).days
    )
    assert (old.totals.seed_kg, new.totals.seed_kg) == (2.0, 0.0)
    assert (len(old.lots), len(new.lots)) == (1, 0)


def test_today_in_mid_season_leaves_the_rest_not_yet() -> None:
    page = season_of(field(planting(day(7, 10))), today=day(8, 14))
    cover = page.fields[0].cover
    assert page.counted_to == day(8, 14)
    assert cover.not_yet == (YEAR.last - day(8, 14)).days
    assert cover.living == 32
    assert page.fields[0].strip.segments[-1].ground is Ground.NOT_YET


def test_before_the_season_nothing_is_counted() -> None:
    page = season_of(field(planting(day(7, 10))), today=day(12, 1, 2024))
    assert page.counted_to is None
    assert page.fields[0].cover.not_yet == 365
    assert page.fields[0].plantings[0].doubts == (Doubt.SOWN_AFTER_TODAY,)


def test_what_was_planned_but_not_sown_covers_nothing() -> None:
    one = one_field(planting(None, planned_on=day(7, 10)))
    assert one.cover.living == 0
    assert one.plantings[0].doubts == (Doubt.PLANNED_NOT_SOWN,)
    assert one.plantings[0].weed_window.why_none is NoWindow.NOT_SOWN


def test_an_end_written_before_the_sowing_is_doubted_and_left_out() -> None:
    row = one_planting(planting(day(7, 10), ended(day(6, 1))))
    assert Doubt.ENDED_BEFORE_SOWN in row.doubts
    assert row.alive is not None


def test_frost_seen_ends_a_stand_and_leaves_it_standing_dead() -> None:
    seen = (Observation(day(10, 10), Seen.FROST_KILLED),)
    one = one_field(planting(day(8, 20), observations=seen), weather=summer())
    assert one.cover.living == (day(10, 10) - day(8, 24)).days
    assert one.cover.residue == (YEAR.last - day(10, 10)).days + 1
    assert one.plantings[0].choices[0].end is None


def test_a_frost_killed_stand_tilled_later_covers_until_then() -> None:
    row = planting(
        day(8, 20),
        ended(day(11, 1), Residue.WORKED_IN, ending=Ending.TILLED_IN),
        observations=(Observation(day(10, 10), Seen.FROST_KILLED),),
    )
    assert one_field(row, weather=summer()).cover.residue == 22


def test_a_cut_that_grows_back_keeps_the_stand_living() -> None:
    cut = ended(day(8, 1), regrows=True)
    one = one_field(planting(day(7, 1), cut, ended(day(9, 1), Residue.REMOVED)))
    assert one.cover.living == (day(9, 1) - day(7, 5)).days
    ticks = {tick.kind for tick in one.strip.ticks}
    assert {TickKind.CUT, TickKind.ENDED} <= ticks


# --- residue as cover --------------------------------------------------------


def test_residue_on_top_covers_and_worked_in_leaves_bare_ground() -> None:
    on_top = one_field(heavy(ended(day(8, 14))), weather=summer()).cover
    worked_in = one_field(
        heavy(ended(day(8, 14), Residue.WORKED_IN)), weather=summer()
    ).cover
    assert on_top.residue > 100
    assert worked_in.residue == 0


def test_residue_worked_in_later_covers_until_that_day() -> None:
    end = ended(day(8, 14), Residue.WORKED_IN, worked_in_on=day(9, 1))
    assert one_field(heavy(end), weather=summer()).cover.residue == 18


def test_removed_and_grazed_residue_leaves_bare_ground() -> None:
    for residue in (Residue.REMOVED, Residue.GRAZED):
        one = one_field(heavy(ended(day(8, 14), residue)), weather=summer())
        assert one.cover.residue == 0


def test_cover_seen_after_grazing_counts_from_that_day() -> None:
    row = heavy(ended(day(8, 14), Residue.GRAZED))
    seen = (Observation(day(8, 20), Seen.CANOPY, ground_cover_share=0.5),)
    one = one_field(replace(row, observations=seen), weather=summer())
    assert 10 < one.cover.residue < 100


def test_a_low_cover_seen_cuts_the_reckoned_cover_short() -> None:
    row = heavy(ended(day(8, 14)))
    seen = (Observation(day(9, 3), Seen.CANOPY, ground_cover_share=0.1),)
    one = one_field(replace(row, observations=seen), weather=summer())
    assert one.cover.residue == 20


def test_residue_from_before_the_season_counts_in_it() -> None:
    weighed = (Sample(day(12, 19, 2024), (0.5604,)),)
    row = planting(day(10, 1, 2024), ended(day(12, 20, 2024)), samples=weighed)
    one = one_field(row, weather=summer())
    assert one.cover.residue > 100
    assert one.plantings == ()


def test_a_cash_crop_without_decay_figures_leaves_bare_ground() -> None:
    row = planting(day(5, 1), ended(day(6, 20)), kinds=[LETTUCE], purpose=Purpose.CASH)
    cover = one_field(row, weather=summer()).cover
    assert (cover.cash, cover.residue) == (50, 0)


def test_buckwheat_on_top_covers_a_third_of_the_soil_for_five_months() -> None:
    # Synthetic summer, 5,000 lb/ac: 105.4 soil-cover days, 156 days >= 30 % in 200.
    long = Span(day(8, 14), day(8, 14) + dt.timedelta(199))
    page = season_of(
        field(heavy(ended(day(8, 14)))),
        weather=summer(),
        season=long,
        today=dt.date(2026, 12, 31),
    )
    cover = page.fields[0].cover
    assert cover.soil_cover_days == pytest.approx(105.4, abs=1.0)
    assert cover.days_at_least_30 == pytest.approx(156, abs=2)


def test_soil_cover_adds_living_and_dead_without_counting_twice() -> None:
    first = heavy(ended(day(8, 14)))
    again = planting(day(8, 20), ended(day(10, 1), Residue.REMOVED))
    alone = one_field(first, weather=summer()).cover
    both = one_field(first, again, weather=summer()).cover
    assert both.living > alone.living
    assert alone.soil_cover_days < both.soil_cover_days < both.counted


# --- the weed window ---------------------------------------------------------


def test_the_window_opens_at_closure_and_shuts_with_buckwheat() -> None:
    # Cornell handbook (CORN-HB-BEN): no control once killed.
    row = one_planting(heavy(ended(day(8, 14))), weather=summer())
    window = row.weed_window
    assert window.living == (Span(day(7, 21), day(8, 13)),)
    assert window.days_likely == 24
    assert window.mulch is not None
    assert (window.mulch.strong, window.mulch.moderate) == (None, None)


def test_a_dead_buckwheat_mulch_is_partial_for_five_weeks() -> None:
    # Synthetic summer: cover falls below 80 % on day 37.
    window = one_planting(heavy(ended(day(8, 14))), weather=summer()).weed_window
    assert window.mulch is not None
    assert window.mulch.partial is not None
    until = window.mulch.partial.likely
    assert until is not None
    assert (until - day(8, 14)).days == pytest.approx(36, abs=1)


def test_a_heavy_rye_mulch_holds_weeds_for_seven_weeks() -> None:
    # Synthetic summer: 8.0 Mg/ha of rye falls below 5 Mg/ha on day 50.
    row = planting(
        day(9, 20, 2024),
        ended(day(5, 20), ending=Ending.ROLLER_CRIMPED, bloom_share=0.5),
        kinds=[RYE],
        samples=(Sample(day(5, 19), (0.8, 0.8)),),
    )
    one = one_planting(row, weather=summer())
    mulch = one.weed_window.mulch
    assert mulch is not None
    assert mulch.moderate is not None
    until = mulch.moderate.likely
    assert until is not None
    assert (until - day(5, 20)).days == pytest.approx(49, abs=1)
    assert one.weed_window.why_none is NoWindow.CLOSURE_UNKNOWN
    assert one.weed_window.days_likely == pytest.approx(50, abs=1)
    assert one.weed_window.days.low < one.weed_window.days.high


def test_worked_in_residue_holds_no_weeds() -> None:
    row = heavy(ended(day(8, 14), Residue.WORKED_IN))
    assert one_planting(row, weather=summer()).weed_window.mulch is None


def test_five_megagrams_of_rye_cut_weeds_by_three_quarters() -> None:
    # Nichols and others 2020: 75 % needs 5 Mg/ha of grass.
    row = planting(
        day(9, 20, 2024),
        ended(day(5, 20)),
        kinds=[RYE],
        samples=(Sample(day(5, 19), (0.5,)),),
    )
    reduction = one_planting(row, weather=summer()).weed_window.reduction
    assert reduction == pytest.approx(0.7488, abs=1e-4)


def test_a_stand_ended_too_soon_never_closed() -> None:
    window = one_planting(planting(day(7, 1), ended(day(7, 15)))).weed_window
    assert (window.living, window.why_none) == ((), NoWindow.ENDED_BEFORE_CLOSURE)


def test_a_young_stand_has_not_closed_yet() -> None:
    window = one_planting(planting(day(7, 1)), today=day(7, 15)).weed_window
    assert window.why_none is NoWindow.NOT_YET_CLOSED


def test_a_living_closed_stand_keeps_its_window_open() -> None:
    window = one_planting(planting(day(7, 1)), today=day(8, 1)).weed_window
    assert window.living == (Span(day(7, 22), day(8, 1)),)
    assert window.still_open


def test_a_cut_opens_the_window_again_as_long_after_as_the_first_time() -> None:
    # Mown before about a quarter of bloom it grows back (common practice).
    cut = ended(day(8, 1), regrows=True, bloom_share=0.2)
    row = planting(day(7, 1), cut, ended(day(9, 1), Residue.REMOVED))
    window = one_planting(row).weed_window
    assert window.living == (
        Span(day(7, 22), day(7, 31)),
        Span(day(8, 18), day(8, 31)),
    )


def test_a_cash_crop_has_no_weed_window() -> None:
    row = planting(day(5, 1), kinds=[LETTUCE], purpose=Purpose.CASH)
    assert one_planting(row).weed_window.why_none is NoWindow.NOT_A_COVER


def test_weed_days_of_a_field_are_weighted_by_area() -> None:
    row = planting(day(7, 1), ended(day(8, 1), Residue.REMOVED), area_m2=50)
    assert one_field(row).weed_days_likely == 5


# --- the residue choice ------------------------------------------------------


def choice(row: PlantingFacts, **wanted: object):  # noqa: ANN201
    return one_planting(row, **{"weather": summer(), **wanted}).choices[0]


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


# --- weather -----------------------------------------------------------------


def test_without_weather_half_lives_of_the_calendar_stand_in() -> None:
    # A humid summer: 65 days on top, 35 worked in, labelled as ours.
    both = choice(heavy(ended(day(8, 14))), weather=None)
    assert both.on_top.half_life_days == 65
    assert both.worked_in.half_life_days == 35
    assert Reason.NO_WEATHER in both.reasons


def test_without_weather_buckwheat_closes_by_days() -> None:
    closed = one_planting(planting(day(7, 1))).stage(StageName.CLOSED)
    assert closed is not None
    assert (closed.on, closed.how) == (day(7, 22), How.ASSUMED)


def test_a_short_record_says_that_weather_ends_before_the_curve() -> None:
    short = summer(day(6, 1), 90)
    both = choice(heavy(ended(day(8, 14))), weather=short)
    assert Reason.WEATHER_ENDS_BEFORE_CURVE in both.reasons
    assert Reason.NO_WEATHER not in both.reasons


def test_days_off_the_record_take_the_same_days_of_other_years() -> None:
    ends_in_august = summer(day(1, 1, 2023), (day(8, 14) - day(1, 1, 2023)).days)
    by_mean = choice(heavy(ended(day(8, 14))), weather=ends_in_august)
    by_record = choice(heavy(ended(day(8, 14))))
    # Rain every third day evens out over the years, so the two differ by little.
    assert by_mean.on_top.half_life_days == pytest.approx(
        by_record.on_top.half_life_days, abs=3
    )


def test_missing_readings_and_days_off_the_record_are_told() -> None:
    weather = summer(day(3, 1), 200)
    weather.tmin_c[10] = np.nan
    weather.rain_mm[20] = np.nan
    page = season_of(field(), weather=weather)
    assert (page.missing_days, page.days_without_weather) == (2, 165)
    assert (page.weather_first, page.weather_last) == (day(3, 1), day(9, 16))


def test_the_frosts_of_the_season_are_told() -> None:
    weather = summer(day(1, 1), 365)
    weather.tmin_c[weather.index(day(5, 2))] = -1.0
    weather.tmin_c[weather.index(day(10, 4))] = -4.0
    frost = season_of(field(), weather=weather).frost
    assert frost is not None
    by_temp = {round(line.temp_c, 1): line for line in frost.lines}
    assert by_temp[0.0].last_spring == day(5, 2)
    assert by_temp[0.0].first_fall == day(10, 4)
    assert by_temp[-2.2].last_spring is None
    assert (frost.lowest_c, frost.lowest_on) == (-4.0, day(10, 4))


# --- seed --------------------------------------------------------------------


def test_seed_is_set_against_the_rate_in_print_as_pure_live_seed() -> None:
    # CORN-BW: 70 lb an acre broadcast. 78 lb at 90 % pure live seed is 70.2 lb.
    row = planting(
        day(7, 10),
        area_m2=ACRE_M2,
        seed_kg=78 * 0.45359237,
        seed_lot=lot(pls=0.90),
    )
    (use,) = season_of(field(row, area_m2=ACRE_M2)).fields[0].plantings[0].seed
    assert use.rate_pls_kg_m2 == pytest.approx(70.2 * LB_AC)
    assert (use.verdict, use.sources) == (Verdict.WITHIN, ("CORN-BW",))


@pytest.mark.parametrize(
    ("pounds", "verdict"),
    [(40, Verdict.BELOW), (66, Verdict.WITHIN), (100, Verdict.ABOVE)],
)
def test_too_little_and_too_much_seed_are_told(pounds: int, verdict: Verdict) -> None:
    row = planting(day(7, 10), area_m2=ACRE_M2, seed_kg=pounds * 0.45359237)
    (use,) = season_of(field(row, area_m2=ACRE_M2)).fields[0].plantings[0].seed
    assert use.verdict is verdict


def test_a_share_of_a_mix_is_set_against_the_same_share_of_the_full_rate() -> None:
    row = planting(
        day(9, 1),
        kinds=[RYE, CLOVER],
        method=Method.DRILLED,
        area_m2=ACRE_M2,
        seed_kg=45 * 0.45359237,
    )
    rye, clover = season_of(field(row, area_m2=ACRE_M2)).fields[0].plantings[0].seed
    assert (rye.verdict, clover.verdict) == (Verdict.WITHIN, Verdict.ABOVE)


def test_without_a_weight_or_a_rate_the_verdict_says_so() -> None:
    (use,) = one_planting(planting(day(7, 10))).seed
    assert use.verdict is Verdict.NO_WEIGHT
    (use,) = one_planting(planting(day(7, 10), kinds=[LETTUCE], seed_kg=1.0)).seed
    assert use.verdict is Verdict.NO_RANGE


def test_a_broadcast_rate_is_drawn_from_the_drilled_where_only_that_is_known() -> None:
    (use,) = one_planting(planting(day(9, 1), kinds=[RYE], seed_kg=1.0)).seed
    assert use.handbook_kg_m2 is not None
    assert use.handbook_kg_m2.low == pytest.approx(60 * 1.4 * LB_AC)


def test_a_lot_tells_every_field_it_went_to() -> None:
    row = planting(day(7, 10), seed_kg=0.5, seed_lot=lot())
    page = season_of(field(row, id=1), field(row, row, id=2))
    (use,) = page.lots
    assert [(one.field_name, one.seed_kg) for one in use.planted] == [
        ("Bed 1", 0.5),
        ("Bed 2", 1.0),
    ]
    assert use.planted_kg == page.totals.seed_kg == 1.5


# --- the whole page ----------------------------------------------------------


def test_totals_are_weighted_by_area() -> None:
    covered = field(planting(day(7, 10), ended(day(8, 14), Residue.REMOVED)), id=1)
    big = field(area_m2=300, id=2)
    totals = season_of(covered, big).totals
    assert totals.area_m2 == 400
    assert totals.cover.living == pytest.approx(31 / 4)
    assert total(totals.cover) == pytest.approx(365)


def test_ended_areas_are_told_by_what_became_of_the_residue() -> None:
    page = season_of(
        field(heavy(ended(day(8, 14))), id=1),
        field(heavy(ended(day(8, 14), Residue.WORKED_IN)), id=2),
    )
    assert (page.totals.left_on_top_m2, page.totals.worked_in_m2) == (100, 100)


def test_every_source_named_on_the_page_is_in_the_bibliography() -> None:
    page = season_of(field(heavy(ended(day(8, 14)))), weather=summer())
    assert page.sources
    assert set(page.sources) <= set(SOURCES)


def test_the_page_lists_every_choice_of_ours_and_marks_the_farms_own() -> None:
    own = Assumptions({"emergence_days": 5})
    page = season_of(field(planting(day(9, 1), kinds=[RYE])), assumptions=own)
    assert [row.key for row in page.assumptions] == [row.key for row in CHOICES]
    assert [row.key for row in page.assumptions if row.farm_own] == ["emergence_days"]
    up = page.fields[0].plantings[0].stage(StageName.EMERGED)
    assert up is not None
    assert up.on == day(9, 6)


def test_a_fitted_constant_may_not_be_changed() -> None:
    with pytest.raises(ValueError, match="may not be changed"):
        Assumptions({"soil_water_full": 25})


def test_a_choice_outside_its_range_is_refused() -> None:
    with pytest.raises(ValueError, match="outside its range"):
        Assumptions({"closed_cover": 2.0})


def test_cautions_of_the_kinds_are_passed_on() -> None:
    row = one_planting(planting(day(7, 10)))
    assert row.cautions == ("fagopyrism", "near_wheat")


def test_a_farm_without_fields_has_an_empty_page() -> None:
    page = season_of()
    assert (page.fields, page.totals.area_m2, page.lots) == ((), 0, ())


def test_a_season_that_ends_before_it_begins_is_refused() -> None:
    with pytest.raises(ValueError, match="before it begins"):
        season_of(field(), season=Span(day(2, 1), day(1, 1)))
