"""The cheapest order: against every order counted, and a second formulation."""

import itertools
import math

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from reports.calc.order import cheapest
from reports.calc.shapes.order import (
    Offer,
    Terms,
)
from tests.calc.order.markets import (
    CENT,
    each,
    prices,
)

KINDS = ("oats", "rye")


@st.composite
def markets(draw, *, least=True, limits=True):
    """Two kinds, up to three suppliers and five offers."""
    needs = {kind: draw(st.integers(0, 60)) * 1.0 for kind in KINDS}
    offers = [
        Offer(
            id=number,
            supplier=draw(st.integers(1, 3)),
            kind=draw(st.sampled_from(KINDS)),
            organic=draw(st.booleans()),
            pls=draw(st.sampled_from([0.5, 0.8, 0.92, 1.0])),
            prices=draw(prices()),
            most_kg=draw(st.sampled_from([None, None, 10.0, 50.0])) if limits else None,
        )
        for number in range(draw(st.integers(1, 4)))
    ]
    terms = {
        supplier: Terms(
            supplier,
            freight_order=draw(st.integers(0, 3000)) / 100,
            freight_kg=draw(st.integers(0, 50)) / 100,
            least_order=draw(st.sampled_from([0.0, 60.0])) if least else 0.0,
        )
        for supplier in (1, 2, 3)
    }
    return needs, offers, terms


def sizes(offer):
    found = {}
    for price in offer.prices:
        found.setdefault(price.bag_kg, []).append(price)
    return found


def choices(offer, need_kg, terms):
    """Every sensible number of bags of every size, with weight and cost."""
    ranges = []
    for bag_kg, rows in sizes(offer).items():
        enough = math.ceil(need_kg / (bag_kg * offer.pls))
        dearest = math.ceil(terms.least_order / rows[-1].each)
        ranges.append(range(max(enough, rows[-1].from_bags, dearest) + 1))
    for bags in itertools.product(*ranges):
        told = list(zip(sizes(offer).items(), bags, strict=True))
        seed_kg = sum(bag_kg * count for (bag_kg, _), count in told)
        goods = sum(each(rows, count) * count for (_, rows), count in told if count)
        if offer.most_kg is None or seed_kg <= offer.most_kg:
            yield seed_kg, goods


def by_counting(needs, offers, terms):
    """Least short, then least not organic, then least money: every order is tried."""
    offers = [offer for offer in offers if needs[offer.kind] > 0]
    each_offer = [
        list(choices(offer, needs[offer.kind], terms[offer.supplier]))
        for offer in offers
    ]
    assume(math.prod(map(len, each_offer)) < 40_000)
    best = None
    for order in itertools.product(*each_offer):
        judged = judge(order, needs, offers, terms)
        if judged is not None and (best is None or judged < best):
            best = judged
    return best


def judge(order, needs, offers, terms):
    cover, organic = dict.fromkeys(KINDS, 0.0), dict.fromkeys(KINDS, 0.0)
    goods, weight = {}, {}
    for offer, (seed_kg, cost) in zip(offers, order, strict=True):
        if seed_kg:
            cover[offer.kind] += seed_kg * offer.pls
            organic[offer.kind] += seed_kg * offer.pls * offer.organic
            goods[offer.supplier] = goods.get(offer.supplier, 0.0) + cost
            weight[offer.supplier] = weight.get(offer.supplier, 0.0) + seed_kg
    if any(cost < terms[one].least_order - 1e-9 for one, cost in goods.items()):
        return None
    money = sum(
        cost + terms[one].freight_order + terms[one].freight_kg * weight[one]
        for one, cost in goods.items()
    )
    short = sum(missing(needs[kind], cover[kind]) for kind in KINDS)
    rest = sum(missing(needs[kind], organic[kind]) for kind in KINDS)
    return round(short, 6), round(rest, 6), money


def missing(need_kg, cover_kg):
    return max(0.0, 1 - cover_kg / need_kg - 1e-9) if need_kg else 0.0


@settings(max_examples=120, deadline=None)
@given(markets(least=False))
def test_the_optimum_is_that_of_counting_every_order(market):
    needs, offers, terms = market
    plan = cheapest(needs, offers, terms)
    counted = by_counting(needs, offers, terms)
    short, rest, money = counted
    assert sum(
        left / needs[kind] for kind, left in plan.short_kg.items()
    ) == pytest.approx(short, abs=1e-5)
    assert sum(
        left / needs[kind] for kind, left in plan.not_organic_kg.items()
    ) == pytest.approx(rest, abs=1e-5)
    # Where organic covers a kind no other seed of it is bought, not even as a filler.
    assert plan.cost == pytest.approx(money, abs=CENT)


@settings(max_examples=80, deadline=None)
@given(markets(limits=False))
def test_least_orders_are_reached_as_cheaply_as_by_counting(market):
    needs, offers, terms = market
    offers = [
        Offer(one.id, one.supplier, one.kind, True, one.pls, one.prices)
        for one in offers
    ]
    plan = cheapest(needs, offers, terms)
    assert plan.cost == pytest.approx(by_counting(needs, offers, terms)[2], abs=CENT)
    for parcel in plan.parcels:
        assert parcel.goods >= parcel.terms.least_order - 1e-6


@settings(max_examples=100, deadline=None)
@given(markets())
def test_rounding_to_bags_never_covers_less_than_is_needed(market):
    needs, offers, terms = market
    plan = cheapest(needs, offers, terms)
    for kind, need_kg in needs.items():
        left = plan.short_kg.get(kind, 0.0)
        assert plan.pls_kg(kind) >= (need_kg - left) * (1 - 1e-6) - 1e-9
        if kind not in plan.short_kg:
            assert plan.pls_kg(kind) >= need_kg * (1 - 1e-8)
    for parcel in plan.parcels:
        assert all(line.bags == int(line.bags) >= 1 for line in parcel.lines)


@settings(max_examples=60, deadline=None)
@given(markets(least=False, limits=False))
def test_a_second_formulation_by_sets_of_suppliers_costs_the_same(market):
    """With the suppliers given, each kind is a cover of its own, built up by weight."""
    needs, offers, terms = market
    offers = [
        Offer(one.id, one.supplier, one.kind, True, one.pls, one.prices)
        for one in offers
    ]
    kinds = {kind for kind, need in needs.items() if need > 0}
    assume(kinds <= {offer.kind for offer in offers})
    costs = []
    for count in range(4):
        for group in itertools.combinations((1, 2, 3), count):
            inside = [offer for offer in offers if offer.supplier in group]
            goods = [built_up(needs[kind], kind, inside, terms) for kind in kinds]
            costs.append(sum(goods) + sum(terms[one].freight_order for one in group))
    plan = cheapest(needs, offers, terms)
    assert plan.cost == pytest.approx(min(costs), abs=CENT)


def built_up(need_kg, kind, offers, terms):
    """Least money to reach a weight, offer after offer, as in a chain of stages."""
    reached = {0.0: 0.0}
    for offer in (one for one in offers if one.kind == kind):
        told = terms[offer.supplier]
        found = dict(reached)
        for seed_kg, goods in choices(offer, need_kg, told):
            cost = goods + told.freight_kg * seed_kg
            for before, paid in reached.items():
                weight = min(need_kg, round(before + seed_kg * offer.pls, 6))
                found[weight] = min(found.get(weight, math.inf), paid + cost)
        reached = found
    return min(
        (paid for weight, paid in reached.items() if weight >= need_kg - 1e-6),
        default=math.inf,
    )
