"""Gaps found by hand, and the order of kinds in cases worked by hand."""

import datetime as dt
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from reports.calc.assumptions import Assumptions
from reports.calc.gaps import Held, aims_of, ranked, stretches
from reports.calc.season.ahead.fitting import Fitter
from reports.calc.season.ahead.gaps import gaps_of
from reports.calc.season.ahead.objections import Farm, LotLeft
from reports.calc.season.ahead.outlook import outlooks
from reports.calc.season.rates import RateTable
from reports.calc.shapes.basics import Between, Span
from reports.calc.shapes.gaps import Against, Aim, Bound, Fit, Gap, RankBy, SeedHand
from reports.calc.shapes.ledger import Purpose
from tests.calc.ahead import TENDER, under, urbana_weather
from tests.calc.builders import CLOVER, LETTUCE, RYE, ended, field, planting

TODAY = dt.date(2010, 7, 1)


def day(month, of, year=2010):
    return dt.date(year, month, of)


def gaps(*plantings, today=TODAY, weather=None):
    here = field(*plantings)
    told = outlooks(here.plantings, under(weather, today))
    return gaps_of([here], {row.planting_id: row for row in told}, today=today)


# --- Stretches -------------------------------------------------------------


def test_a_field_with_nothing_on_it_is_one_gap_without_an_end():
    (gap,) = gaps()
    assert (gap.first, gap.last, gap.opens) == (TODAY, None, Bound.NOTHING_BEFORE)


def test_a_gap_lies_between_an_end_and_the_next_planned_planting():
    (gap, after) = gaps(
        planting(day(4, 1), ended(day(6, 20)), purpose=Purpose.CASH, kinds=[LETTUCE]),
        planting(None, planned_on=day(8, 15), kinds=[TENDER]),
    )
    assert (gap.first, gap.last) == (TODAY, day(8, 14))
    assert gap.before == ("Lettuce",) and gap.after == "Buckwheat"
    # Sown 15 August: ended by working in on day 45 at the latest.
    assert after.first == day(8, 15) + dt.timedelta(46)


def test_a_standing_cover_leaves_a_gap_after_the_end_foretold():
    (gap,) = gaps(planting(day(6, 10), kinds=[TENDER]))
    assert (gap.first, gap.opens) == (day(7, 26), Bound.STAND_ENDS)


def test_a_cash_crop_without_an_end_leaves_no_gap():
    assert gaps(planting(day(6, 1), purpose=Purpose.CASH, kinds=[LETTUCE])) == ()


def test_a_next_crop_that_was_named_closes_the_gap():
    row = replace(
        planting(day(4, 1), ended(day(6, 20)), kinds=[TENDER]),
        next_crop="Cabbage",
        next_crop_on=day(8, 1),
        next_crop_transplanted=True,
    )
    (gap,) = gaps(row)
    assert (gap.last, gap.after) == (day(7, 31), "Cabbage")
    assert gap.transplanted_after is True


def test_a_plan_long_past_holds_nothing():
    (gap,) = gaps(planting(None, planned_on=day(5, 1), kinds=[TENDER]))
    assert gap.first == TODAY


def test_a_field_told_under_its_beds_has_no_gap_of_its_own():
    whole = replace(field(), parts_m2=100.0)
    assert gaps_of([whole], {}, today=TODAY) == ()


@given(
    st.lists(st.tuples(st.integers(0, 200), st.integers(0, 60)), min_size=0, max_size=6)
)
def test_held_days_and_gaps_never_meet(rows):
    held = [
        Held(TODAY + dt.timedelta(start), TODAY + dt.timedelta(start + days))
        for start, days in rows
    ]
    within = Span(TODAY, TODAY + dt.timedelta(250))
    for gap in stretches(held, within=within):
        assert gap.days >= 14
        for one in held:
            assert one.last < gap.first or one.first > gap.last


# --- Kinds that fit --------------------------------------------------------


def fitted(gap, *kinds, farm=None, weather=None, today=TODAY):
    fitter = Fitter(
        under(weather, today), farm or Farm(), RateTable(dict(Assumptions()))
    )
    return {fit.slug: fit for fit in fitter.fits(gap, dict(enumerate(kinds)))}


def bare(last=None, **more):
    return Gap(1, "Bed", 4046.8564224, TODAY, last, Bound.TODAY, **more)


@pytest.mark.shared_data
def test_a_kind_is_sown_until_the_last_day_that_still_lets_it_cover():
    fit = fitted(bare(), TENDER, weather=urbana_weather())["buckwheat"]
    assert fit.sow_from == TODAY
    assert day(9, 1) < fit.sow_until < day(10, 1)
    assert fit.chance_cover == 1.0 and fit.chance_flower == 1.0
    # Closed by the 21st day or sooner, seed on the 45th.
    assert 24 <= fit.weed_days <= 36


@pytest.mark.shared_data
def test_the_next_crop_cuts_the_time_short_by_its_wait():
    fit = fitted(bare(day(8, 15)), TENDER, weather=urbana_weather())["buckwheat"]
    # A week between working in and the next crop (CORN-HB-IDLE).
    assert fit.end_by == day(8, 16) - dt.timedelta(7)
    assert fit.sow_until < fit.end_by - dt.timedelta(9)


@pytest.mark.shared_data
def test_a_gap_too_short_to_cover_says_so():
    fit = fitted(bare(day(7, 16)), TENDER, weather=urbana_weather())["buckwheat"]
    assert fit.sow_from is None and Against.NO_TIME in fit.against


def test_without_weather_nothing_is_said_of_time():
    fit = fitted(bare(), TENDER)["buckwheat"]
    assert fit.sow_from is None and fit.chance_cover is None
    assert Against.NO_TIME not in fit.against


def test_seed_needed_is_the_rate_in_print_over_the_area():
    # CORN-BW: 70 lb/ac broadcast; one acre.
    lots = {"buckwheat": (LotLeft(20.0, True), LotLeft(15.0, True))}
    seed = fitted(bare(), TENDER, farm=Farm(lots))["buckwheat"].seed
    assert seed.needed_kg.low == pytest.approx(70 * 0.45359237)
    assert seed.on_hand_kg == 35.0 and seed.enough


def test_reasons_against_are_named():
    wheaty = Farm({"buckwheat": (LotLeft(1.0, False),)}, wheat=True, animals=True)
    kind = replace(TENDER, family="Polygonaceae")
    gap = bare(families_before=frozenset({"Polygonaceae"}))
    against = fitted(gap, kind, farm=wheaty)["buckwheat"].against
    assert against == (
        Against.FAMILY_BEFORE,
        Against.WHEAT_NEAR,
        Against.ANIMALS,
        Against.SEED_UNTESTED,
        Against.SEED_SHORT,
    )


def test_aims_go_by_group():
    assert Aim.NITROGEN in aims_of(CLOVER, weed_days=None)
    assert set(aims_of(RYE, weed_days=40)) == {
        Aim.WEEDS,
        Aim.CATCHING,
        Aim.FORAGE,
        Aim.MULCH,
    }
    assert Aim.FORAGE not in aims_of(TENDER, weed_days=None)


# --- Order, worked by hand -------------------------------------------------

SEED = SeedHand(Between(10.0, 10.0), 0.0, 0, False)


def fit(name, *, fits=True, cover=0.9, weeds=30.0, seed=0.0, against=(), aims=()):
    return Fit(
        slug=name.lower(),
        kind_id=1,
        name=name,
        sow_from=TODAY if fits else None,
        sow_until=None,
        chance_cover=cover,
        chance_flower=None,
        weed_days=weeds,
        end_by=None,
        seed=replace(SEED, on_hand_kg=seed, lots=1 if seed else 0),
        aims=aims,
        against=against,
        caveats=(),
    )


CASES = [
    # What fits goes before what does not, whatever else.
    ([fit("A", fits=False, cover=1.0), fit("B", cover=0.8)], "BA", RankBy.FITS),
    # One weighty reason against outweighs a surer cover.
    (
        [fit("A", cover=1.0, against=(Against.WHEAT_NEAR,)), fit("B", cover=0.8)],
        "BA",
        RankBy.AGAINST,
    ),
    # Seed that is missing is no weighty reason: it can be bought.
    (
        [fit("A", cover=1.0, against=(Against.NO_SEED,)), fit("B", cover=0.8)],
        "AB",
        RankBy.COVER,
    ),
    # 0.93 and 0.97 are both nine tenths: days of weeds held decide.
    ([fit("A", cover=0.97, weeds=20), fit("B", cover=0.93, weeds=40)], "BA", "weeds"),
    # All alike: seed on hand, enough before some before none.
    ([fit("A"), fit("B", seed=4.0), fit("C", seed=12.0)], "CBA", RankBy.SEED),
    # All alike: by name.
    ([fit("B"), fit("A")], "AB", RankBy.NAME),
]


@pytest.mark.parametrize(("fits", "order", "by"), CASES)
def test_kinds_stand_in_the_order_worked_out_by_hand(fits, order, by):
    rows = ranked(fits)
    assert "".join(row.fit.name for row in rows) == order
    assert rows[0].ahead_by is (RankBy.WEED_DAYS if by == "weeds" else by)
    assert rows[-1].ahead_by is None


def test_only_kinds_good_for_the_aim_are_ranked():
    rows = ranked(
        [fit("A", aims=(Aim.MULCH,)), fit("B", aims=(Aim.BEES,))], aim=Aim.BEES
    )
    assert [row.fit.name for row in rows] == ["B"]


def test_a_cover_is_over_before_its_seed_and_in_time_for_the_next_crop():
    told = replace(fit("A"), end_by=dt.date(2026, 9, 20), seed_on=dt.date(2026, 8, 20))
    assert told.over_by == dt.date(2026, 8, 19)
    assert replace(told, seed_on=None).over_by == dt.date(2026, 9, 20)
    assert replace(told, seed_on=None, end_by=None).over_by is None
