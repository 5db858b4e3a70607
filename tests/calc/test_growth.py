"""Stages of growth: by days, by heat, and by what was seen."""

import datetime as dt
from dataclasses import replace

import pytest

from reports.calc.assumptions import Assumptions
from reports.calc.growth import forecast, stage_dates, timetable
from reports.calc.shapes.basics import How
from reports.calc.shapes.ledger import (
    KindFacts,
    Method,
    Observation,
    PlantingFacts,
    Purpose,
    Seen,
)
from reports.calc.shapes.season import StageDate, StageName
from tests.calc.builders import (
    BUCKWHEAT,
    CLOVER,
    LETTUCE,
    RYE,
    day,
    ended,
    one_planting,
    planting,
    summer,
)

ASSUMPTIONS = Assumptions()


def stages(
    row: PlantingFacts, heat: dt.date | None = None
) -> dict[StageName, StageDate]:
    start = row.start or day(7, 1)
    tables = [
        timetable(line.kind, month=start.month, assumptions=ASSUMPTIONS)
        for line in row.lines
    ]
    dates = stage_dates(
        planting=row,
        timetables=tables,
        closed_by_heat=[heat] * len(tables),
        assumptions=ASSUMPTIONS,
    )
    return {one.name: one for one in dates}


def days_after(start: dt.date, one: StageDate) -> tuple[int, int, int]:
    assert one.on and one.early and one.late
    return (one.early - start).days, (one.on - start).days, (one.late - start).days


def test_buckwheat_sown_on_10_july_is_in_full_bloom_on_14_august() -> None:
    # Cornell buckwheat handbook, key to timing (CORN-HB-KEY): day 35.
    assert stages(planting(day(7, 10)))[StageName.FULL_BLOOM].on == day(8, 14)


def test_buckwheat_sown_on_10_july_is_mown_by_19_august_before_seed_starts() -> None:
    # CORN-HB-KEY: sown in July, seed starts about day 40.
    assert stages(planting(day(7, 10)))[StageName.FIRST_SEED].on == day(8, 19)


def test_buckwheat_sown_on_10_july_is_tilled_by_24_august_before_viable_seed() -> None:
    # CORN-HB-KEY: first viable seed about day 45.
    assert stages(planting(day(7, 10)))[StageName.VIABLE_SEED].on == day(8, 24)


def test_buckwheat_sown_in_june_sets_seed_later() -> None:
    # CORN-HB-KEY: sown in June, seed starts on day 45 to 50.
    seed = stages(planting(day(6, 10)))[StageName.FIRST_SEED]
    assert days_after(day(6, 10), seed) == (45, 48, 50)


def test_buckwheat_is_up_in_three_to_five_days_as_common_practice_has_it() -> None:
    # Common practice: 3 to 4 days near 70 °F; OMAFRA-BW: 3 to 5 days.
    up = stages(planting(day(7, 1)))[StageName.EMERGED]
    early, on, late = days_after(day(7, 1), up)
    assert (early, late) == (3, 5)
    assert 3 <= on <= 4


def test_flower_dates_span_common_practice_and_the_handbook() -> None:
    # Common practice: flowers in 3 to 4 weeks; OMAFRA-BW: 4 to 6 weeks.
    flower = stages(planting(day(7, 1)))[StageName.FIRST_FLOWER]
    assert days_after(day(7, 1), flower) == (21, 30, 42)


def test_buckwheat_closes_by_days_where_heat_comes_later() -> None:
    closed = stages(planting(day(7, 1)), heat=day(7, 25))[StageName.CLOSED]
    assert (closed.on, closed.how) == (day(7, 22), How.ASSUMED)


def test_buckwheat_closes_by_heat_where_heat_comes_first() -> None:
    closed = stages(planting(day(7, 1)), heat=day(7, 13))[StageName.CLOSED]
    assert (closed.on, closed.how) == (day(7, 13), How.HEAT)


def test_in_a_warm_summer_300_fahrenheit_days_close_buckwheat_in_12_days() -> None:
    # 18/30 °C is 14 °C-days a day above 10 °C; 300 °F-days are 166.7 °C-days.
    row = one_planting(planting(day(7, 1)), weather=summer())
    closed = row.stage(StageName.CLOSED)
    assert closed is not None
    assert (closed.on, closed.how) == (day(7, 12), How.HEAT)


def test_a_kind_without_figures_is_up_after_a_week_and_says_assumed() -> None:
    up = stages(planting(day(9, 1), kinds=[RYE]))[StageName.EMERGED]
    assert (up.on, up.how, up.source) == (day(9, 8), How.ASSUMED, "ASSUMED")


def test_a_kind_without_canopy_figures_has_no_closing_day() -> None:
    closed = stages(planting(day(9, 1), kinds=[RYE]))[StageName.CLOSED]
    assert (closed.on, closed.how) == (None, How.UNKNOWN)


def test_what_was_seen_replaces_the_forecast() -> None:
    seen = (Observation(day(8, 4), Seen.FIRST_FLOWER),)
    flower = stages(planting(day(7, 1), observations=seen))[StageName.FIRST_FLOWER]
    assert (flower.on, flower.how, flower.early) == (day(8, 4), How.OBSERVED, day(8, 4))


def test_a_late_flower_puts_off_full_bloom_by_as_much() -> None:
    seen = (Observation(day(8, 4), Seen.FIRST_FLOWER),)
    bloom = stages(planting(day(7, 1), observations=seen))[StageName.FULL_BLOOM]
    assert bloom.on == day(8, 9)


def test_a_stand_in_flower_has_emerged_by_then() -> None:
    row = planting(
        day(3, 1),
        kinds=[CLOVER],
        method=Method.FROST_SEEDED,
        observations=(Observation(day(6, 1), Seen.FIRST_FLOWER),),
    )
    up = stages(row)[StageName.EMERGED]
    assert (up.on, up.early) == (day(6, 1), None)


def test_a_frost_seeded_stand_must_be_seen_to_be_up() -> None:
    row = planting(day(3, 1), kinds=[CLOVER], method=Method.FROST_SEEDED)
    assert stages(row)[StageName.EMERGED].on is None


def test_bloom_seen_bounds_first_flower_without_becoming_it() -> None:
    seen = (Observation(day(7, 20), Seen.BLOOM, bloom_share=0.1),)
    flower = stages(planting(day(7, 1), observations=seen))[StageName.FIRST_FLOWER]
    assert (flower.on, flower.how) == (day(7, 20), How.DAYS)


def test_no_bloom_seen_holds_first_flower_back() -> None:
    seen = (Observation(day(8, 10), Seen.BLOOM, bloom_share=0.0),)
    flower = stages(planting(day(7, 1), observations=seen))[StageName.FIRST_FLOWER]
    assert flower.on == day(8, 11)


def test_half_in_bloom_is_full_bloom() -> None:
    seen = (Observation(day(8, 2), Seen.BLOOM, bloom_share=0.5),)
    bloom = stages(planting(day(7, 1), observations=seen))[StageName.FULL_BLOOM]
    assert (bloom.on, bloom.how) == (day(8, 2), How.OBSERVED)


def test_a_canopy_of_four_fifths_seen_is_the_closing_day() -> None:
    seen = (
        Observation(day(7, 15), Seen.CANOPY, canopy_share=0.6),
        Observation(day(7, 19), Seen.CANOPY, canopy_share=0.85),
    )
    closed = stages(planting(day(7, 1), observations=seen))[StageName.CLOSED]
    assert (closed.on, closed.how) == (day(7, 19), How.OBSERVED)


def test_an_open_canopy_seen_holds_the_closing_day_back() -> None:
    seen = (Observation(day(7, 30), Seen.CANOPY, canopy_share=0.6),)
    closed = stages(planting(day(7, 1), observations=seen))[StageName.CLOSED]
    assert closed.on == day(7, 31)


def test_a_thin_stand_in_flower_need_not_have_closed() -> None:
    seen = (Observation(day(7, 18), Seen.FIRST_FLOWER),)
    closed = stages(planting(day(7, 1), observations=seen))[StageName.CLOSED]
    assert closed.on == day(7, 22)


def test_seen_before_it_was_sown_counts_for_nothing() -> None:
    seen = (Observation(day(6, 1), Seen.FIRST_FLOWER),)
    flower = stages(planting(day(7, 1), observations=seen))[StageName.FIRST_FLOWER]
    assert flower.how is How.DAYS


def test_transplants_cash_crops_and_volunteers_are_up_on_their_date() -> None:
    for row in (
        planting(day(5, 1), kinds=[LETTUCE], purpose=Purpose.CASH),
        planting(day(5, 1), method=Method.TRANSPLANTED),
        planting(day(5, 1), method=Method.SELF_SOWN),
    ):
        assert stages(row)[StageName.EMERGED].on == day(5, 1)


def test_a_mix_follows_the_kind_that_comes_first() -> None:
    row = planting(day(7, 1), kinds=[RYE, BUCKWHEAT])
    assert stages(row)[StageName.EMERGED].on == day(7, 5)


def test_an_ended_stand_never_comes_to_its_later_stages() -> None:
    row = one_planting(planting(day(7, 1), ended(day(7, 20))))
    flower = row.stage(StageName.FIRST_FLOWER)
    assert flower is not None
    assert (flower.on, flower.how) == (None, How.UNKNOWN)


def test_without_a_date_no_stage_has_one() -> None:
    assert all(one.on is None for one in stages(planting(None)).values())


def test_a_memory_figure_is_marked_unverified() -> None:
    unread = tuple(
        replace(row, unverified=True) for row in BUCKWHEAT.figures["full_bloom_days"]
    )
    kind = replace(BUCKWHEAT, figures={**BUCKWHEAT.figures, "full_bloom_days": unread})
    bloom = stages(planting(day(7, 1), kinds=[kind]))[StageName.FULL_BLOOM]
    assert bloom.unverified


def test_the_farms_own_canopy_days_win_over_our_choice() -> None:
    own = replace(BUCKWHEAT.figures["canopy_days"][0], low=18, high=18, farm_own=True)
    figures = {**BUCKWHEAT.figures, "canopy_days": (own,)}
    kind: KindFacts = replace(BUCKWHEAT, figures=figures)
    assert stages(planting(day(7, 1), kinds=[kind]))[StageName.CLOSED].on == day(7, 19)


def test_a_forecast_needs_a_heat_date_for_every_kind() -> None:
    table = timetable(BUCKWHEAT, month=7, assumptions=ASSUMPTIONS)
    with pytest.raises(ValueError, match="differ in length"):
        forecast(planting=planting(day(7, 1)), timetables=[table], closed_by_heat=[])


def test_ending_seven_to_ten_days_into_flower_comes_before_viable_seed() -> None:
    # Common practice and OMAFRA-BW: end 7 to 10 days after flowering begins.
    dates = stages(planting(day(7, 10)))
    flower, seed = dates[StageName.FIRST_FLOWER].on, dates[StageName.VIABLE_SEED].on
    assert flower is not None
    assert seed is not None
    latest = BUCKWHEAT.all("end_after_flower_days")[0].high
    assert flower + dt.timedelta(latest) <= seed


def test_buckwheat_is_done_ten_to_twelve_weeks_after_sowing() -> None:
    # Common practice and OMAFRA-BW agree: ripe seed in 10 to 12 weeks.
    ripe = BUCKWHEAT.all("seed_mature_days")
    assert {(row.low, row.high) for row in ripe} == {(70, 84)}
    seed = stages(planting(day(7, 10)))[StageName.VIABLE_SEED].on
    assert seed is not None
    assert seed < day(7, 10) + dt.timedelta(weeks=10)
