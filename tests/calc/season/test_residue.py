"""Residue as cover of the ground."""

import datetime as dt
from dataclasses import replace

import pytest

from reports.calc.shapes.basics import Span
from reports.calc.shapes.ledger import (
    Observation,
    Purpose,
    Residue,
    Sample,
    Seen,
)
from tests.calc.builders import (
    LETTUCE,
    day,
    ended,
    field,
    one_field,
    planting,
    season_of,
    summer,
)
from tests.calc.season.stands import (
    heavy,
)


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
