"""The days of a field add up to its season."""

import datetime as dt
from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from reports.calc.shapes.basics import Span
from reports.calc.shapes.ledger import (
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
    Doubt,
    Ground,
    NoWindow,
    TickKind,
)
from tests.calc.builders import (
    BUCKWHEAT,
    CLOVER,
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
from tests.calc.season.stands import (
    total,
)

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
