"""Which rules a farm is held to, with whose numbers, and in which order."""

import pytest

from reports.calc.rules import RULES, findings, rules_for, tallies
from reports.calc.shapes.rules import Matter, RuleId, RuleSet, Severity, Tally
from tests.calc import books as at
from tests.calc.books import CLEAN, but, day, rule, spoiled
from tests.calc.rules.faults import (
    EVERY,
    found,
)

US = RuleSet.ORGANIC_US


def test_a_certifiers_number_takes_the_place_of_the_rules_within_its_range():
    key = (US, RuleId.SEED_SEARCH, "sources")
    mended = {one.id: one for one in rules_for([US], {key: 5})}[RuleId.SEED_SEARCH]
    assert mended["sources"] == 5
    assert [one.key for one in mended.params if one.overruled] == ["sources"]
    kept = {one.id: one for one in rules_for([US], {key: 500})}[RuleId.SEED_SEARCH]
    assert kept["sources"] == 3
    with pytest.raises(ValueError, match="sources"):
        mended.overruled("sources", 500)
    with pytest.raises(ValueError, match="nothing"):
        mended.overruled("nothing", 1)


def test_a_farm_is_only_held_to_the_sets_it_switched_on():
    sets = {one.set for one in rules_for([RuleSet.FOOD], {})}
    assert sets == {RuleSet.FOOD, RuleSet.BOOKS, RuleSet.LABEL}


def test_a_rule_is_put_to_a_record_by_the_day_of_the_record():
    supplier = rule(RuleId.SUPPLIER)
    assert supplier.covers(day("2024-03-19"))
    assert not supplier.covers(day("2024-03-18"))


@pytest.mark.parametrize("id_", [RuleId.REENTRY, RuleId.POSTING, RuleId.TRAINED])
def test_worker_protection_begins_where_the_sections_before_it_ran_out(id_):
    """40 CFR 170.2: sections 170.1 to 170.260 ran out on 2 January 2017."""
    assert rule(id_).covers(day("2017-01-02"))
    assert not rule(id_).covers(day("2017-01-01"))


def test_findings_come_heaviest_first_and_each_once():
    books = spoiled(
        lots=(but(at.LOT, certificate="", purity=None),),
        gone=(but(at.GONE, invoice=""),),
    )
    told = findings(books, EVERY)
    order = [list(Severity).index(one.severity) for one in told]
    assert order == sorted(order)
    assert len({one.key for one in told}) == len(told)


def test_what_two_sets_ask_of_one_record_is_told_once_under_the_heavier():
    cover = but(at.STAND, id=2, purpose="cover", sown_on=day("03-20"))
    sets = RuleSet.COVER_CROP, RuleSet.INSURANCE
    asked = [rule(RuleId.COVER_END, one) for one in sets]
    for rules in (asked, asked[::-1]):
        (one,) = findings(spoiled(stands=(at.STAND, cover)), rules)
        assert (one.rule.set, one.severity) == (RuleSet.COVER_CROP, Severity.FIX)


def test_counts_are_told_in_whole_numbers():
    told = {one.tally: (one.have, one.of) for one in tallies(CLEAN)}
    assert told[Tally.PLANTINGS_LOT] == (1, 1)
    assert told[Tally.HARVESTS_CHAIN] == (1, 1)
    spoilt = spoiled(stands=(but(at.STAND, lines=()),))
    told = {one.tally: (one.have, one.of) for one in tallies(spoilt)}
    assert told[Tally.PLANTINGS_LOT] == (0, 1)


def test_a_farm_with_no_records_at_all_is_told_so_and_nothing_breaks():
    empty = type(CLEAN)(season=at.SEASON, today=at.TODAY)
    assert found(empty) == {Matter.SEASON_EMPTY}
    assert tallies(empty) == ()


def test_every_number_of_a_rule_lies_in_its_own_range():
    for one in RULES:
        for param in one.params:
            assert param.low <= param.value <= param.high, (one.id, param.key)
