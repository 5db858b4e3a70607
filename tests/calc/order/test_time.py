"""An order that is given too little time."""

import random

import pytest

from reports.calc.order import cheapest, compared
from tests.bench.order import market


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
