"""Mixes bought and on hand, counted by their kinds."""

import datetime as dt
import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from reports.calc.order import cheapest, drawn, trouble_with
from reports.calc.shapes.order import (
    Offer,
    OfferTrouble,
    OnHand,
    Outcome,
    Price,
    Want,
)
from tests.calc.order.markets import (
    CENT,
)


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
