"""Seed on hand: its age, and the sowing that gets it."""

import datetime as dt

import pytest

from reports.calc.order import aged_pls, drawn
from reports.calc.shapes.order import (
    Draw,
    OnHand,
    Want,
)

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
