"""The cheapest order, held against counting every order there is."""

import datetime as dt
import itertools
import math
import random

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from reports.calc.order import aged_pls, cheapest, compared, drawn, trouble_with
from reports.calc.shapes.order import (
    Draw,
    Offer,
    OfferTrouble,
    OnHand,
    Outcome,
    Price,
    Rule,
    Terms,
    Want,
)
from tests.bench.order import market

CENT = 0.01
KINDS = ("oats", "rye")


@st.composite
def prices(draw):
    """One or two sizes of bag, the price falling once with the number."""
    rows = []
    for bag_kg in draw(st.sampled_from([(10.0,), (25.0,), (10.0, 25.0)])):
        each = draw(st.integers(200, 4000))
        rows.append(Price(bag_kg, 1, each / 100))
        if draw(st.booleans()):
            off = draw(st.integers(1, 30))
            rows.append(
                Price(bag_kg, draw(st.integers(2, 4)), each * (100 - off) // 100 / 100)
            )
    return tuple(rows)


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


def each(rows, bags):
    return min(row.each for row in rows if row.from_bags <= bags)


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


def offer(number, supplier, kind, each, *, organic=True, bag_kg=25.0, **more):
    return Offer(
        number, supplier, kind, organic, 1.0, (Price(bag_kg, 1, each),), **more
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


TESTED = dt.date(2025, 11, 1)
SPRING = dt.date(2026, 5, 1)


def on_hand(number, kg, *, organic=True, tested_on=TESTED, kind="oats", pls=0.9):
    return OnHand(number, kind, kg, pls, tested_on, organic)


def test_seed_is_counted_weaker_by_its_age_and_never_stronger():
    year = dt.timedelta(365.25)
    older = {"pls": 0.9, "tested_on": TESTED, "loss_a_year": 0.1}
    assert aged_pls(**older, on=TESTED) == 0.9
    assert aged_pls(**older, on=TESTED - year) == 0.9
    assert aged_pls(**older, on=TESTED + 2 * year) == pytest.approx(0.72, abs=1e-3)
    assert aged_pls(**older, on=TESTED + 20 * year) == 0.0


def test_stock_goes_to_the_first_sowing_and_the_oldest_test_goes_first():
    lots = [on_hand(1, 30.0), on_hand(2, 20.0, tested_on=TESTED.replace(month=2))]
    wants = [
        Want(8, "oats", SPRING, 36.0),
        Want(7, "oats", SPRING.replace(day=2), 27.0),
    ]
    draws, left = drawn(wants, lots, loss_a_year=0.0, oldest_years=3)
    assert draws == (
        Draw(8, "oats", 2, 20.0, pytest.approx(18.0)),
        Draw(8, "oats", 1, pytest.approx(20.0), pytest.approx(18.0)),
        Draw(7, "oats", 1, pytest.approx(10.0), pytest.approx(9.0)),
    )
    assert left == (Want(7, "oats", SPRING.replace(day=2), pytest.approx(18.0)),)


def test_stock_too_old_or_without_a_test_is_not_counted_on():
    lots = [
        on_hand(1, 50.0, tested_on=dt.date(2022, 1, 1)),
        on_hand(2, 50.0, tested_on=None),
        on_hand(3, 50.0, kind="rye"),
        on_hand(4, -2.0),
    ]
    want = Want(8, "oats", SPRING, 36.0)
    assert drawn([want], lots, loss_a_year=0.0, oldest_years=3) == ((), (want,))


def test_organic_stock_goes_before_other_stock():
    lots = [on_hand(1, 50.0, organic=False, tested_on=SPRING), on_hand(2, 50.0)]
    draws, _ = drawn(
        [Want(8, "oats", SPRING, 18.0)], lots, loss_a_year=0.0, oldest_years=3
    )
    assert [draw.lot for draw in draws] == [2]


def mix_offer(each_bag, pls=0.4, other=0.5, **more):
    bag = Price(bag_kg=10.0, from_bags=1, each=each_bag)
    return Offer(9, 3, "oats", True, pls, (bag,), also=(("rye", other),), **more)


@settings(max_examples=60, deadline=None)
@given(
    st.integers(1, 25),
    st.integers(1, 25),
    st.integers(0, 20),
    st.lists(st.integers(100, 3000), min_size=3, max_size=3),
)
def test_a_mix_is_bought_as_counting_every_order_says(oats, rye, more_oats, cents):
    # One planting of both kinds, one of oats alone; the mix only fits the first.
    mixed = {"oats": oats * 1.0, "rye": rye * 1.0}
    needs = mixed | {"oats": oats + more_oats * 1.0}
    mix, oat, ryes = (cent / 100 for cent in cents)
    offers = [
        mix_offer(mix),
        Offer(1, 1, "oats", True, 0.8, (Price(10.0, 1, oat),)),
        Offer(2, 2, "rye", True, 0.8, (Price(10.0, 1, ryes),)),
    ]
    costs = []
    for bags in range(9):
        used = min(bags * 10.0, oats / 0.4, rye / 0.5)
        rest = needs["oats"] - used * 0.4, needs["rye"] - used * 0.5
        more = [math.ceil(max(0.0, kg) / 8.0 - 1e-9) for kg in rest]
        costs.append(bags * mix + more[0] * oat + more[1] * ryes)
    plan = cheapest(needs, offers, {}, blends=[mixed])
    assert plan.outcome is Outcome.CHEAPEST
    assert plan.cost == pytest.approx(min(costs), abs=CENT)


def test_a_mix_covers_no_planting_of_one_of_its_kinds():
    plan = cheapest({"oats": 10.0, "rye": 5.0}, [mix_offer(20.0)], {})
    assert plan.outcome is Outcome.NOT_COVERED
    assert plan.short_kg == {"oats": 10.0, "rye": 5.0}
    assert plan.parcels == ()


def test_what_a_mix_leaves_short_is_told_by_kind():
    wants = {"oats": 8.0, "rye": 20.0}
    plan = cheapest(wants, [mix_offer(20.0)], {}, blends=[wants])
    # Twenty kilograms hold all the oats and half the rye.
    assert plan.parcels[0].lines[0].bags == 2
    assert plan.short_kg == pytest.approx({"rye": 10.0})
    assert (plan.pls_kg("oats"), plan.pls_kg("rye")) == (8.0, 10.0)


def test_an_offer_of_a_mix_with_a_dead_kind_is_left_out():
    assert trouble_with(mix_offer(20.0, other=0.0)) is OfferTrouble.NO_PURE_LIVE_SEED
    assert trouble_with(mix_offer(20.0, 0.7, 0.5)) is OfferTrouble.NO_PURE_LIVE_SEED


def test_a_mix_on_hand_goes_to_who_wants_all_its_kinds_and_over_none():
    day = dt.date(2026, 4, 1)
    mix = OnHand(1, "oats", 30.0, 0.4, day, True, also=(("rye", 0.5),))
    rye = OnHand(2, "rye", 100.0, 0.8, day, True)
    wants = [
        Want(1, "oats", day, 4.0),
        Want(2, "oats", day, 4.0),
        Want(2, "rye", day, 9.0),
    ]
    draws, left = drawn(wants, [rye, mix], loss_a_year=0.0, oldest_years=2)
    assert [(d.planting, d.kind, d.lot) for d in draws] == [
        (2, "oats", 1),
        (2, "rye", 1),
        (2, "rye", 2),
    ]
    assert [d.pls_kg for d in draws] == pytest.approx([4.0, 5.0, 4.0])
    assert draws[0].seed_kg + draws[1].seed_kg == pytest.approx(10.0)
    assert draws[0].whole_kg == draws[1].whole_kg == pytest.approx(10.0)
    assert [(want.planting, want.pls_kg) for want in left] == [(1, 4.0)]


def test_a_plan_short_of_time_is_told_as_a_range_that_holds_the_proven_one():
    told = market(12, 5, random.Random(7))
    full = compared(*told, seconds_beside=20.0)
    hasty = compared(*told, seconds_beside=1e-6)
    assert hasty.best.cost == pytest.approx(full.best.cost)
    for quick, proven in zip(hasty.rules, full.rules, strict=True):
        assert proven.is_proved
        if proven.saved is not None and quick.saved is not None:
            assert quick.saved - 0.01 <= proven.saved <= (quick.most or 0.0) + 0.01


def test_no_time_at_all_still_finds_an_order_that_covers():
    needs, offers, terms = market(12, 5, random.Random(7))
    plan = cheapest(needs, offers, terms, seconds=1e-6)
    assert not plan.short_kg
    assert all(plan.pls_kg(kind) >= kg * (1 - 1e-9) for kind, kg in needs.items())
