"""From plantings to come to the order: rates, stock, offers, and what came of it."""

import datetime as dt
from dataclasses import replace

import pytest

from reports.calc.assumptions import Assumptions
from reports.calc.season.buying import buying
from reports.calc.season.needs import needs_of
from reports.calc.season.receipts import owed, receipts_of
from reports.calc.shapes.ledger import Group, Method
from reports.calc.shapes.order import OfferTrouble, OnHand, Outcome, Price
from reports.calc.shapes.receipt import (
    CameLot,
    Content,
    Difference,
    OrderedLine,
    OrderFacts,
)
from reports.calc.shapes.seed import OfferFacts, Planned, PlannedLine
from tests.calc.builders import ACRE_M2, BUCKWHEAT, LB_AC, kind

LB = 0.45359237
TODAY = dt.date(2026, 2, 1)
JUNE = dt.date(2026, 6, 10)
PLAIN = Assumptions({"seed_loss_a_year": 0.0})


def planned(number=1, method=Method.DRILLED, acres=2.0, on=JUNE, **line):
    lines = (PlannedLine(**{"kind": BUCKWHEAT, "share": 1.0, **line}),)
    return Planned(number, 7, "North", on, acres * ACRE_M2, method, lines)


def needs(*rows, overage=0.0, **more):
    return needs_of(rows, assumptions=PLAIN, overage=overage, **more)


def offer(number=1, status="organic", pls=0.9, **more):
    told = {
        "supplier": 5,
        "supplier_name": "Lake Seed",
        "kind": "buckwheat",
        "kind_id": 3,
        "kind_name": "Buckwheat",
        "variety": "",
        "tested_on": TODAY,
        "first": None,
        "last": None,
        "most_kg": None,
        "prices": (Price(50 * LB, 1, 60.0),),
    }
    return OfferFacts(number, status=status, pls=pls, **told | more)


def bought(rows, offers, lots=(), **more):
    return buying(rows, lots, offers, {}, assumptions=PLAIN, today=TODAY, **more)


def test_two_acres_of_drilled_buckwheat_need_a_hundred_pounds():
    """Cornell Buckwheat Handbook: 50 lb/ac drilled, 70 broadcast."""
    drilled, broadcast = needs(planned(), planned(2, Method.BROADCAST))
    assert drilled.pls_kg / LB == pytest.approx(100)
    assert broadcast.pls_kg / LB == pytest.approx(140)


def test_headlands_and_seed_to_spare_are_reckoned():
    (need,) = needs(planned(), overage=0.10, headlands=0.25)
    assert need.area_m2 == pytest.approx(1.5 * ACRE_M2)
    assert need.pls_kg / LB == pytest.approx(82.5)


def test_a_weight_planned_goes_before_the_rate_in_print():
    (need,) = needs(planned(seed_kg=80 * LB, lot_pls=0.9))
    assert need.full_kg_m2 / LB_AC == pytest.approx(36)
    (need,) = needs(planned(seed_kg=80 * LB))
    assert need.full_kg_m2 / LB_AC == pytest.approx(40)


def test_transplants_and_volunteers_need_no_seed():
    rows = [planned(method=one) for one in (Method.TRANSPLANTED, Method.SELF_SOWN)]
    assert needs(*rows) == ()


def test_a_kind_without_a_rate_is_told_apart():
    bare = kind("teff", Group.GRASS)
    told = bought(needs(planned(kind=bare)), [])
    assert [need.kind.slug for need in told.unknown] == ["teff"]
    assert told.comparison.best.outcome is Outcome.NOTHING_NEEDED


def test_stock_goes_first_and_the_rest_is_bought_in_whole_bags():
    lot = OnHand(9, "buckwheat", 40 * LB, 0.9, TODAY, True)
    told = bought(needs(planned()), [offer()], [lot])
    assert told.draws[0].seed_kg / LB == pytest.approx(40)
    assert told.needs_kg["buckwheat"] / LB == pytest.approx(64)
    (line,) = told.comparison.best.parcels[0].lines
    assert line.bags == 2


def test_old_stock_is_counted_weaker_and_very_old_stock_not_at_all():
    old = OnHand(9, "buckwheat", 1000.0, 0.9, JUNE - dt.timedelta(366), True)
    weak = buying(
        needs(planned()), [old], [], {}, assumptions=Assumptions(), today=TODAY
    )
    assert weak.draws[0].seed_kg * 0.9 * 0.9 == pytest.approx(100 * LB, rel=1e-3)
    ancient = replace(old, tested_on=JUNE - dt.timedelta(5 * 366))
    told = bought(needs(planned()), [], [ancient])
    assert told.draws == ()


def test_an_offer_that_comes_too_late_or_is_over_is_not_bought():
    late = offer(first=JUNE + dt.timedelta(1))
    over = offer(2, last=TODAY - dt.timedelta(1))
    told = bought(needs(planned()), [late, over])
    assert told.comparison.best.outcome is Outcome.NOT_COVERED
    assert told.comparison.best.short_kg["buckwheat"] / LB == pytest.approx(100)


def test_treated_seed_is_left_out_where_nobody_approved_it():
    treated = offer(status="treated", is_allowed=False)
    assert bought(needs(planned()), [treated]).left_out[0].trouble is None
    told = bought(needs(planned()), [replace(treated, is_allowed=True)])
    assert told.left_out == ()


def test_an_offer_without_a_test_is_named_with_its_trouble():
    told = bought(needs(planned()), [offer(pls=None)])
    assert told.left_out[0].trouble is OfferTrouble.NO_PURE_LIVE_SEED


LINE = OrderedLine("oats", 1, "Oats", "", "organic", 25.0, 4, 30.0, 0.9)
OATS, PEA = Content("oats", "Oats", 0.36), Content("pea", "Pea", 0.495)
MIX = OrderedLine(
    "oats", 1, "Oats + Pea", "mix", "organic", 25.0, 4, 20.0, None, (OATS, PEA)
)
CAME = CameLot(
    2, "M1", "oats", "Oats + Pea", "mix", "organic", 100.0, 0.855, (OATS, PEA)
)
LOT = CameLot(1, "L1", "oats", "Oats", "", "organic", 100.0, 0.9)


def order(lines, lots):
    return OrderFacts(1, "Lake Seed", "", "", TODAY, None, None, 5.0, "", lines, lots)


@pytest.mark.parametrize(
    ("lots", "differences"),
    [
        ((), {Difference.NOTHING_YET}),
        ((LOT,), set()),
        ((replace(LOT, received_kg=99.8),), set()),
        ((replace(LOT, received_kg=75.0),), {Difference.SHORT}),
        ((LOT, replace(LOT, received_kg=25.0)), {Difference.OVER}),
        ((replace(LOT, pls=0.8),), {Difference.WEAKER}),
        ((replace(LOT, pls=None),), {Difference.NOT_TESTED}),
        ((replace(LOT, status="untreated"),), {Difference.OTHER_STATUS}),
        ((replace(LOT, variety="Jerry"),), {Difference.OTHER_VARIETY}),
        ((replace(LOT, unshown=True),), {Difference.UNSHOWN}),
        (
            (LOT, replace(LOT, kind="rye", kind_name="Rye")),
            {Difference.NOT_ORDERED},
        ),
    ],
)
def test_what_came_is_held_against_the_order(lots, differences):
    told = receipts_of(order((LINE,), lots))
    assert {one for row in told for one in row.differences} == differences


@pytest.mark.parametrize(
    ("contents", "differences"),
    [
        ((OATS, PEA), set()),
        ((PEA, OATS), set()),
        # More of one kind does not make up for less of the other.
        ((replace(OATS, pls=0.5), replace(PEA, pls=0.4)), {Difference.WEAKER}),
        ((OATS, replace(PEA, pls=None)), {Difference.NOT_TESTED}),
        ((OATS,), {Difference.OTHER_KINDS}),
        ((OATS, Content("rye", "Rye", 0.5)), {Difference.OTHER_KINDS}),
    ],
)
def test_the_tag_of_a_mix_is_held_against_its_offer_kind_by_kind(contents, differences):
    lot = replace(CAME, contents=contents)
    (told,) = receipts_of(order((MIX,), (lot,)))
    assert set(told.differences) == differences


def test_a_mix_is_not_taken_for_the_seed_of_one_kind_that_was_ordered_beside_it():
    told = receipts_of(order((LINE, MIX), (LOT, replace(CAME, received_kg=60.0))))
    assert [row.came_kg for row in told] == [100.0, 60.0]
    assert [row.came_pls_kg for row in told] == pytest.approx([90.0, 60 * 0.855])
    left = [kg for _place, _line, kg in owed(order((LINE, MIX), (LOT,)))]
    assert left == [0.0, 100.0]


def test_an_order_adds_up_with_its_freight():
    assert order((LINE,), ()).total == 125.0
