"""Seed of kinds that are sold engineered too, and the land clock of perennials."""

import pytest

from reports.calc.shapes import books as rows
from reports.calc.shapes.rules import Matter, RuleId, RuleSet
from tests.calc import books as at
from tests.calc.books import but, day, rule, spoiled
from tests.calc.rules.faults import found

SEED = [rule(RuleId.ENGINEERED)]
EU = [rule(RuleId.LAND_CLOCK, RuleSet.ORGANIC_EU)]
UNSAID, LATE = {Matter.ENGINEERED_UNSAID}, {Matter.ENGINEERED_SAID_LATE}


@pytest.mark.parametrize(
    ("told", "matters"),
    [
        ({"engineered": ()}, set()),
        ({}, UNSAID),
        ({"status": "treated"}, UNSAID),
        ({"status": "organic"}, set()),
        ({"status": "organic", "saved": True}, UNSAID),
        ({"non_gmo": "written", "non_gmo_on": day("05-10")}, set()),
        ({"non_gmo": "test", "non_gmo_on": day("05-11")}, LATE),
    ],
)
def test_such_seed_is_shown_to_be_none_of_it_before_it_is_sown(told, matters):
    """7 CFR 205.105(e) bars excluded methods (from memory); that a statement is
    asked for of seed that is not organic, or was saved, is our own reading."""
    lot = but(at.LOT, **{"status": "untreated", "engineered": ("Corn",), **told})
    assert found(spoiled(lots=(lot,)), SEED) == matters


def test_of_a_mix_only_the_kinds_sold_engineered_are_named():
    lot = but(
        at.LOT,
        status="untreated",
        parts=(rows.Part("Oats"), rows.Part("Soybean")),
        engineered=("Soybean",),
    )
    assert lot.called(lot.engineered) == "Soybean BW-26"
    assert found(spoiled(lots=(lot,)), SEED) == UNSAID


def test_ground_under_no_organic_rules_asks_for_no_statement():
    books = spoiled(
        fields=(but(at.GROUND, status="not_organic"),),
        lots=(but(at.LOT, status="untreated", engineered=("Corn",)),),
    )
    assert found(books, SEED) == set()


def eaten(last_used, *, perennial=True, use="food", earlier=()):
    """Sown 10 May 2026 and cut on 2 September, after a substance used that day."""
    lines = (but(at.STAND.lines[0], perennial=perennial),)
    used = rows.Statement(1, 1, day("2020-01-01"), day(last_used), "atrazine")
    return spoiled(
        stands=(but(at.STAND, lines=lines, sown_on=day("2023-05-10")),),
        crops=(*earlier, but(at.CROP, use=use)),
        statements=(used,),
    )


@pytest.mark.parametrize(
    ("last_used", "matters"),
    [
        ("2023-09-02", set()),
        ("2023-09-03", {Matter.LAND_CUT_EARLY}),
        ("2021-05-11", set()),
    ],
)
def test_fruit_in_the_union_waits_36_months_before_its_first_harvest(
    last_used, matters
):
    """The text before Regulation (EU) 2018/848: 36 months for perennials other than
    forage, 24 before annuals are sown. Check the current text."""
    assert found(eaten(last_used), EU) == matters


def test_the_first_harvest_in_the_books_counts_not_the_last():
    first = but(at.CROP, id=9, code="H0", on=day("2025-09-02"))
    told = found(eaten("2023-01-01", earlier=(first,)), EU)
    assert told == {Matter.LAND_CUT_EARLY}


@pytest.mark.parametrize(
    ("last_used", "matters"),
    [("2024-09-02", set()), ("2024-09-03", {Matter.LAND_NOT_YET})],
)
def test_forage_in_the_union_waits_24_months_before_it_is_fed(last_used, matters):
    assert found(eaten(last_used, use="feed"), EU) == matters


def test_an_annual_in_the_union_is_read_by_its_sowing():
    assert found(eaten("2021-05-11", perennial=False), EU) == {Matter.LAND_SOWN_EARLY}
    assert found(eaten("2021-05-10", perennial=False), EU) == set()
