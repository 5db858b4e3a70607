"""The weed-suppression window of a stand."""

import pytest

from reports.calc.shapes.basics import Span
from reports.calc.shapes.ledger import (
    Ending,
    Purpose,
    Residue,
    Sample,
)
from reports.calc.shapes.season import (
    NoWindow,
)
from tests.calc.builders import (
    LETTUCE,
    RYE,
    day,
    ended,
    one_field,
    one_planting,
    planting,
    summer,
)
from tests.calc.season.stands import (
    heavy,
)


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
