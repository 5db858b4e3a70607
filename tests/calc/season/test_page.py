"""The whole page of a season."""

import pytest

from reports.calc.assumptions import CHOICES, Assumptions
from reports.calc.shapes.basics import Span
from reports.calc.shapes.ledger import (
    Residue,
)
from reports.calc.shapes.season import (
    StageName,
)
from reports.calc.sources import SOURCES
from tests.calc.builders import (
    RYE,
    day,
    ended,
    field,
    one_planting,
    planting,
    season_of,
    summer,
)
from tests.calc.season.stands import (
    heavy,
    total,
)


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
