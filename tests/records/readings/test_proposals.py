"""What is proposed for a table of weather, and what is not."""

import datetime as dt

import pytest

from records.reading import weather
from records.reading.weather import (
    Caution,
    TempUnit,
)
from tests.records.readings.files import (
    PLAIN,
    only,
)


def season(low, high):
    """A year of days whose highest run from one figure to the other and back."""
    first = dt.date(2011, 1, 1)
    return [
        (first + dt.timedelta(days=n), low + (high - low) * (1 - abs(n - 182) / 183))
        for n in range(365)
    ]


@pytest.mark.parametrize(
    ("header", "values", "unit"),
    [
        ("tmax", [f"{t:.1f}" for _, t in season(-5, 35)], TempUnit.C),
        ("tmax", [f"{t:.0f}" for _, t in season(20, 95)], TempUnit.F),
        ("tmax", [f"{t:.0f}" for _, t in season(-50, 350)], TempUnit.TENTH_C),
        ("tmax_f", [f"{t:.1f}" for _, t in season(-5, 35)], TempUnit.F),
        ("Tmax (deg C)", ["60"], TempUnit.C),
        ("tmax", ["20.5"], None),
    ],
)
def test_a_unit_is_proposed_only_from_the_header_or_a_whole_year(header, values, unit):
    first = dt.date(2011, 1, 1)
    rows = [f"{first + dt.timedelta(days=n)},{v}" for n, v in enumerate(values)]
    text = "\n".join([f"date,{header}", *rows])
    assert weather.guess(text.encode(), "a.csv").proposals.temp_unit is unit


def test_units_that_two_headers_contradict_are_not_proposed():
    text = "date,tmin_c,tmax_f\n2012-10-06,1,50\n"
    assert weather.guess(text.encode(), "a.csv").proposals.temp_unit is None


def test_a_role_that_two_columns_could_fill_is_not_proposed():
    text = "date,tmin,low,tmax\n2012-10-06,1,1,2\n"
    proposals = weather.guess(text.encode(), "a.csv").proposals
    assert (proposals.tmin, proposals.tmax) == (None, "tmax")


def test_a_table_without_days_proposes_nothing():
    text = "when,how warm\n2012-10-06,1\n"
    assert weather.guess(text.encode(), "a.csv").proposals is None


def test_a_year_that_never_gets_warm_is_pointed_out():
    rows = [f"{day},,{t:.1f}," for day, t in season(1, 9)]
    text = "\n".join(["date,tmin,tmax,rain", *rows])
    series = only(weather.read(text.encode(), name="a.csv", columns=PLAIN))
    assert [heed.kind for heed in series.warnings] == [Caution.LOOKS_COLD]
