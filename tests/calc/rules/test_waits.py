"""What has to wait, what settles it, and mixes kind by kind."""

import datetime as dt

import pytest

from reports.calc.rules import findings
from reports.calc.shapes import books as rows
from reports.calc.shapes.basics import Span
from reports.calc.shapes.rules import Matter, RuleId, RuleSet, Severity
from tests.calc import books as at
from tests.calc.books import CLEAN, but, day, rule, spoiled
from tests.calc.rules.faults import (
    COVER,
    EVERY,
    MANURE,
    PEST,
    found,
    used_on,
)


@pytest.mark.parametrize(
    ("cut", "passes"), [("2025-03-09", False), ("2025-03-10", True)]
)
def test_lettuce_cut_119_days_after_manure_under_rye_fails_and_120_passes(cut, passes):
    """7 CFR 205.203(c)(1)(ii): worked in on 10 November 2024."""
    put = but(
        at.PUT, id=3, product_id=3, on=day("2024-11-09"), worked_in_on=day("2024-11-10")
    )
    books = spoiled(
        season=Span(day("2025-01-01"), day("2025-12-31")),
        products=(*CLEAN.products, MANURE),
        puts=(put,),
        crops=(but(at.CROP, on=day(cut), stand_id=None),),
    )
    assert (Matter.MANURE_SOON in found(books, [rule(RuleId.MANURE)])) is not passes


def test_manure_left_on_top_fails_every_food_harvest_and_gives_no_day():
    """7 CFR 205.203(c)(1): the days run from being worked in."""
    put = but(at.PUT, id=3, product_id=3, on=day("03-01"), worked_in_on=None)
    later = but(at.CROP, id=2, code="H2", on=day("12-20"))
    books = spoiled(
        products=(*CLEAN.products, MANURE), puts=(put,), crops=(at.CROP, later)
    )
    (told,) = findings(books, [rule(RuleId.MANURE)])
    assert told.found.matter == Matter.MANURE_ON_TOP
    assert told.found.values["lot"] == "H1, H2"
    assert "earliest" not in told.found.values


def test_compost_of_no_batch_waits_like_manure_until_somebody_approves_it():
    heap = rows.Product(4, "Bought compost", "compost")
    put = but(at.PUT, id=4, product_id=4, worked_in_on=day("08-01"))
    asked = [rule(RuleId.COMPOST)]
    books = spoiled(products=(*CLEAN.products, heap), puts=(put,))
    assert found(books, asked) == {Matter.COMPOST_NO_BATCH, Matter.COMPOST_SOON}
    leave = but(heap, approval="IPC 15")
    assert found(but(books, products=(*CLEAN.products, leave)), asked) == set()


@pytest.mark.parametrize(
    ("touches", "found_"), [(True, True), (None, True), (False, False)]
)
def test_a_crop_whose_contact_is_not_known_waits_the_longer_interval(touches, found_):
    put = but(at.PUT, id=3, product_id=3, worked_in_on=day("05-20"))
    books = spoiled(
        products=(*CLEAN.products, MANURE),
        puts=(put,),
        crops=(but(at.CROP, touches_soil=touches),),
    )
    assert (Matter.MANURE_SOON in found(books)) is found_


@pytest.mark.parametrize(
    ("sown", "eligible"), [("2024-10-14", False), ("2024-10-15", True)]
)
def test_eu_ground_clean_since_october_2022_is_sown_from_october_2024(sown, eligible):
    """Regulation (EU) 2018/848, Annex II: 24 months before sowing."""
    last = day("2022-10-15")
    books = spoiled(
        statements=(rows.Statement(1, 1, day("2020-01-01"), last, "2,4-D"),),
        stands=(but(at.STAND, sown_on=day(sown)),),
    )
    matters = found(books, [rule(RuleId.LAND_CLOCK, RuleSet.ORGANIC_EU)])
    assert (Matter.LAND_SOWN_EARLY not in matters) is eligible


def test_a_bed_waits_for_what_was_used_on_the_whole_field_but_not_on_its_sister():
    whole = but(at.GROUND, id=5, name="Whole")
    bed, sister = (but(at.GROUND, id=n, name=str(n), parent_id=5) for n in (1, 6))
    used = day("2020-01-01"), day("2025-01-01"), "2,4-D"
    clock = [rule(RuleId.LAND_CLOCK)]
    for place, waits in ((5, True), (6, False), (1, True)):
        told = (rows.Statement(1, place, *used),)
        books = spoiled(fields=(whole, bed, sister), statements=told)
        assert (Matter.LAND_NOT_YET in found(books, clock)) is waits


def test_a_clean_out_in_between_settles_the_use_before():
    cleaned = (rows.Cleaned(1, "drill", day("04-15")),)
    assert Matter.NOT_CLEANED not in found(used_on("not_organic", cleaned))
    assert Matter.NOT_CLEANED not in found(used_on("organic"))


@pytest.mark.parametrize(
    ("hours", "severity"),
    [(8, None), (12, None), (20, Severity.WARN), (48, Severity.STOP)],
)
def test_work_the_day_after_a_spray_weighs_by_how_much_of_it_lies_inside(
    hours, severity
):
    books = spoiled(
        products=(at.PRODUCT, but(PEST, reentry_hours=hours)),
        stands=(at.STAND, but(COVER, sown_on=day("06-11"))),
    )
    told = findings(books, [rule(RuleId.REENTRY)])
    assert [one.severity for one in told] == ([severity] if severity else [])


@pytest.mark.parametrize(
    ("posted", "worked", "late"),
    [
        ("06-11 13:59", None, False),
        ("06-11 14:01", None, True),
        ("06-11 05:59", "06-11", False),
        ("06-11 06:01", "06-11", True),
        ("06-11 13:59", "06-12", False),
        ("06-11 06:01", "06-10", False),
    ],
)
def test_what_was_sprayed_is_posted_within_a_day_and_before_anybody_goes_in(
    posted, worked, late
):
    """40 CFR 170.311(b): sprayed until 14:00 on 10 June. That nobody is at work before
    six in the morning is our own."""
    stood = dt.datetime.fromisoformat(f"2026-{posted}")
    puts = (at.PUT, but(at.SPRAYED, posted_at=stood))
    stands = (at.STAND,)
    if worked:
        stands += (but(COVER, sown_on=day(worked)),)
    told = found(spoiled(puts=puts, stands=stands), [rule(RuleId.POSTING)])
    assert told == ({Matter.POSTED_LATE} if late else set())


@pytest.mark.parametrize(
    ("noun", "on", "told"),
    [
        ("observations", "06-11", True),
        ("irrigations", "06-12", True),
        ("observations", "06-13", False),
        ("observations", "06-10", False),
        ("incidents", "06-11", False),
    ],
)
def test_a_walk_over_ground_that_is_shut_counts_as_work_there(noun, on, told):
    """40 CFR 170: nobody enters before the label's interval is over."""
    books = spoiled(
        products=(at.PRODUCT, but(PEST, reentry_hours=48)),
        entries=(but(at.ENTRY, noun=noun, on=day(on)),),
    )
    matters = found(books, [rule(RuleId.REENTRY)])
    assert matters == ({Matter.ENTERED_EARLY} if told else set())


def test_a_mix_that_is_not_organic_needs_a_search_for_each_of_its_kinds():
    matter = Matter.SEED_NO_SEARCH
    parts = (rows.Part("Buckwheat", 0.9), rows.Part("Oats", 0.8))
    mix = but(at.LOT, number="MIX", status="untreated", purity=None, parts=parts)

    def unsearched(*searches):
        told = findings(spoiled(lots=(mix,), searches=searches), EVERY)
        made = [one.found for one in told]
        return [one.values["seed"] for one in made if one.matter == matter]

    asked = tuple((name, day("02-01")) for name in "ABC")
    search = rows.Search(1, None, "Buckwheat", day("02-03"), "early", "quantity", asked)
    assert unsearched() == ["Buckwheat + Oats MIX"]
    assert unsearched(search) == ["Oats MIX"]
    assert unsearched(search, but(search, id=2, kind="Oats")) == []


def test_the_tag_of_a_mix_is_told_when_every_kind_of_it_was_tested():
    told = but(at.LOT, parts=(rows.Part("Buckwheat", 0.9), rows.Part("Oats")))
    assert Matter.TAG_SILENT in found(spoiled(lots=(told,)))
    whole = but(told, purity=None, parts=(rows.Part("Oats", 0.8),))
    assert Matter.TAG_SILENT not in found(spoiled(lots=(whole,)))
