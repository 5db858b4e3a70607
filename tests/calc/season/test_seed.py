"""Seed set against the rate in print."""

import pytest

from reports.calc.shapes.ledger import (
    Method,
)
from reports.calc.shapes.season import (
    Verdict,
)
from tests.calc.builders import (
    ACRE_M2,
    CLOVER,
    LB_AC,
    LETTUCE,
    RYE,
    day,
    field,
    lot,
    one_planting,
    planting,
    season_of,
)


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
