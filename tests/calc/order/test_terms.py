"""What freight, breaks, organic seed and impossible offers do to an order."""

import pytest

from reports.calc.order import cheapest, compared, trouble_with
from reports.calc.shapes.order import (
    Offer,
    OfferTrouble,
    Outcome,
    Price,
    Rule,
    Terms,
)
from tests.calc.order.markets import (
    CENT,
    offer,
)


def test_two_suppliers_are_left_for_one_when_freight_outweighs_the_price():
    offers = [offer(1, 1, "oats", 20.0), offer(2, 2, "rye", 20.0)]
    offers += [offer(3, 3, "oats", 24.0), offer(4, 3, "rye", 24.0)]
    terms = {n: Terms(n, freight_order=30.0) for n in (1, 2, 3)}
    told = compared({"oats": 50.0, "rye": 50.0}, offers, terms)
    assert told.best.suppliers == {3}
    assert told.best.cost == pytest.approx(4 * 24 + 30)
    assert told.other is not None
    assert told.other.suppliers == {1, 2}
    assert told.other.cost == pytest.approx(4 * 20 + 60)
    assert told.best.bound == pytest.approx(told.best.cost, abs=CENT)


def test_a_price_break_buys_one_bag_more_for_less_money():
    rows = (Price(25.0, 1, 30.0), Price(25.0, 4, 20.0))
    plan = cheapest({"oats": 75.0}, [Offer(1, 1, "oats", True, 1.0, rows)], {})
    assert (plan.parcels[0].lines[0].bags, plan.cost) == (4, 80.0)


def test_seed_that_is_not_organic_waits_until_organic_seed_does_not_reach():
    cheap = offer(1, 1, "vetch", 10.0, organic=False)
    dear = offer(2, 2, "vetch", 90.0)
    plan = cheapest({"vetch": 50.0}, [cheap, dear], {})
    assert plan.cost == 180.0
    assert plan.not_organic_kg == {}
    scarce = offer(2, 2, "vetch", 90.0, most_kg=25.0)
    plan = cheapest({"vetch": 50.0}, [cheap, scarce], {})
    assert plan.cost == 100.0
    assert plan.not_organic_kg == {"vetch": pytest.approx(25.0)}


def test_what_a_rule_costs_is_what_the_order_saves_without_it():
    offers = [
        offer(1, 1, "vetch", 10.0, organic=False),
        offer(2, 2, "vetch", 20.0, in_stock=True),
        offer(3, 3, "vetch", 15.0, in_stock=False),
    ]
    terms = {2: Terms(2, least_order=60.0)}
    told = compared({"vetch": 40.0}, offers, terms)
    saved = {row.rule: row.saved for row in told.rules}
    assert told.best.cost == 60.0
    assert saved[Rule.ORGANIC_FIRST] == pytest.approx(40.0)
    assert saved[Rule.LEAST_ORDER] == pytest.approx(20.0)
    assert saved[Rule.IN_STOCK] == pytest.approx(30.0)
    assert saved[Rule.WHOLE_BAGS] == pytest.approx(0.0)


def test_a_kind_that_cannot_be_covered_is_named_with_what_is_missing():
    offers = [offer(1, 1, "oats", 20.0), offer(2, 1, "rye", 20.0, most_kg=30.0)]
    plan = cheapest({"oats": 25.0, "rye": 60.0, "phacelia": 3.0}, offers, {})
    assert plan.outcome is Outcome.NOT_COVERED
    assert plan.short_kg == {
        "rye": pytest.approx(35.0),
        "phacelia": pytest.approx(3.0),
    }
    assert plan.pls_kg("oats") == 25.0


def test_with_no_offers_everything_is_short():
    plan = cheapest({"oats": 25.0}, [], {})
    assert plan.outcome is Outcome.NOT_COVERED
    assert (plan.parcels, plan.short_kg) == ((), {"oats": 25.0})


def test_with_nothing_needed_nothing_is_ordered():
    assert cheapest({"oats": 0.0}, [], {}).outcome is Outcome.NOTHING_NEEDED
    with pytest.raises(ValueError, match="below 0"):
        cheapest({"oats": -1.0}, [], {})


@pytest.mark.parametrize(
    ("pls", "prices", "trouble"),
    [
        (0.0, (Price(25.0, 1, 9.0),), OfferTrouble.NO_PURE_LIVE_SEED),
        (0.9, (), OfferTrouble.NO_PRICE),
        (0.9, (Price(0.0, 1, 9.0),), OfferTrouble.NO_BAG_SIZE),
        (
            0.9,
            (Price(25.0, 5, 9.0), Price(25.0, 1, 9.0)),
            OfferTrouble.BREAKS_OUT_OF_ORDER,
        ),
        (
            0.9,
            (Price(25.0, 1, 9.0), Price(25.0, 5, 10.0)),
            OfferTrouble.BREAKS_OUT_OF_ORDER,
        ),
        (0.9, (Price(25.0, 1, 9.0), Price(25.0, 5, 8.0)), None),
    ],
)
def test_an_offer_that_makes_no_sense_is_left_out(pls, prices, trouble):
    told = Offer(1, 1, "oats", True, pls, prices)
    assert trouble_with(told) is trouble
    plan = cheapest({"oats": 10.0}, [told], {})
    assert bool(plan.parcels) == (trouble is None)
