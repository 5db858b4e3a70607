"""South of the equator the same stand, half a year later, comes to the same."""

import datetime as dt

import numpy as np
import pytest

from reports.calc.assumptions import Assumptions
from reports.calc.season.frosts import frosts_in
from reports.calc.season.halves import sown_as_if
from reports.calc.season.rates import RateTable
from reports.calc.shapes.basics import Span
from reports.calc.shapes.ledger import Group, Method, Weather
from tests.calc.builders import figure, kind

HALF = dt.timedelta(days=184)


@pytest.mark.parametrize(
    ("day", "read_as"),
    [
        (dt.date(2026, 1, 10), (7, 10)),
        (dt.date(2026, 7, 10), (1, 10)),
        (dt.date(2026, 8, 31), (2, 29)),
        (dt.date(2026, 12, 31), (6, 30)),
        (dt.date(2024, 2, 29), (8, 29)),
    ],
)
def test_a_southern_sowing_reads_the_figures_of_the_month_opposite(day, read_as):
    there = sown_as_if(day, southern=True)
    assert (there.month, there.day) == read_as
    assert sown_as_if(day, southern=False) == day


def winter(coldest_on, days=1100, first=dt.date(2024, 1, 1)):
    """Nights that are coldest once a year, by the cosine of the day."""
    on = (coldest_on - first).days
    wave = np.cos((np.arange(days) - on) / 365.25 * 2 * np.pi)
    return first, 8.0 - 12.0 * wave


def weather(first, tmin):
    return Weather("Hill", first, tmin, tmin + 10, np.zeros_like(tmin))


def test_frosts_of_spring_and_fall_are_sought_half_a_year_apart():
    north = weather(*winter(dt.date(2025, 1, 15)))
    first, tmin = winter(dt.date(2025, 1, 15) + HALF)
    south = weather(first, tmin)
    season = Span(dt.date(2025, 1, 1), dt.date(2025, 12, 31))
    above = frosts_in(north, season)
    below = frosts_in(south, season, southern=True)
    for there, here in zip(above.lines, below.lines, strict=True):
        assert here.last_spring.month in {8, 9, 10, 11}
        assert here.first_fall.month in {3, 4, 5, 6}
        assert abs((here.last_spring - there.last_spring - HALF).days) <= 1


def test_a_southern_season_over_new_year_has_its_own_frosts():
    south = weather(*winter(dt.date(2025, 7, 15)))
    season = Span(dt.date(2025, 7, 1), dt.date(2026, 6, 30))
    line = frosts_in(south, season, southern=True).lines[1]
    assert dt.date(2025, 8, 1) < line.last_spring < dt.date(2025, 12, 1)
    assert dt.date(2026, 3, 1) < line.first_fall < dt.date(2026, 6, 30)


def test_rates_by_the_day_of_sowing_are_moved():
    rates = [
        figure("seeding_rate_drilled", 0.010, 0.010, "CORN-BW", stage="by_0801"),
        figure("seeding_rate_drilled", 0.020, 0.020, "CORN-BW", stage="by_1001"),
    ]
    oats = kind("oats", Group.GRASS, *(one for one in rates))
    north = RateTable(dict(Assumptions())).rates
    south = RateTable(dict(Assumptions()), southern=True).rates
    at = (oats, Method.DRILLED, 50_000.0)
    july, january = dt.date(2026, 7, 20), dt.date(2026, 1, 20)
    september, march = dt.date(2026, 9, 20), dt.date(2026, 3, 20)
    assert south(*at, january) == north(*at, july)
    assert south(*at, march) == north(*at, september)
    assert north(*at, july) != north(*at, september)
