"""The ensemble of years, against a slow and plain reckoning of the same."""

import datetime as dt

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from reports.calc import forecast
from reports.calc.growth import HeatRule
from reports.calc.season.ahead.growing import Sowing
from reports.calc.season.ahead.hindsight import hindsight, records_of
from reports.calc.season.ahead.sky import Sky
from reports.calc.shapes.ahead import Caveat, SpreadOf
from reports.calc.shapes.basics import How
from reports.calc.shapes.ledger import Method, Observation, Seen, Weather
from reports.calc.shapes.season import StageName
from tests.calc.ahead import (
    TENDER,
    clemson_weather,
    outlook,
    under,
    urbana_weather,
)
from tests.calc.builders import planting

TODAY = dt.date(2010, 7, 1)


def plain_heat_day(weather, sown, rule, today, year):
    """Walk day by day: this year as read, then the same days of another year."""
    heat, day = 0.0, sown
    while True:
        read = day if day <= today else _same_day(day, sown, year)
        at = (read - weather.first).days
        if not 0 <= at < len(weather):
            return None
        low = max(weather.tmin_c[at], rule.base_c)
        high = max(weather.tmax_c[at], rule.base_c)
        heat += (low + high) / 2 - rule.base_c
        if heat >= rule.sum_c_days - 1e-9:
            return (day - sown).days
        day += dt.timedelta(1)


def _same_day(day, sown, year):
    return day.replace(year=year + day.year - sown.year)


@pytest.mark.shared_data
@pytest.mark.parametrize("sown", [dt.date(2010, 6, 25), dt.date(2010, 8, 20)])
def test_heat_in_every_year_is_what_a_walk_day_by_day_finds(sown):
    rule = HeatRule(10.0, 300 * 5 / 9, "ASSUMED", or_days_first=False)
    gappy = urbana_weather()
    low, high = (
        forecast.made_good(row, first_day=gappy.first)
        for row in (gappy.tmin_c, gappy.tmax_c)
    )
    weather = Weather("Filled", gappy.first, low, high, gappy.rain_mm)
    fast = under(weather, TODAY).heat_days([sown], rule)[0]
    for year, days in zip(range(1981, 2010), fast, strict=False):
        assert days == plain_heat_day(weather, sown, rule, TODAY, year), year
    assert np.isnan(fast[-1])


@pytest.mark.shared_data
def test_a_thousand_stands_are_reckoned_as_each_alone():
    weather = urbana_weather()
    growing = under(weather, TODAY)
    starts = [dt.date(2010, 4, 20) + dt.timedelta(day) for day in range(0, 150, 7)]
    many = growing.by_year([Sowing(TENDER, one, Method.DRILLED) for one in starts])
    for place, start in enumerate(starts):
        alone = growing.by_year([Sowing(TENDER, start, Method.DRILLED)])[0]
        np.testing.assert_array_equal(many[place], alone)


def plain_quantile(days, chance):
    """Number 8 of Hyndman and Fan (1996), written out for one row."""
    rows = sorted(days)
    place = chance * (len(rows) + 1 / 3) + 1 / 3
    if place <= 1:
        return rows[0]
    if place >= len(rows):
        return rows[-1]
    low = int(place)
    return rows[low - 1] + (place - low) * (rows[low] - rows[low - 1])


@given(
    st.lists(st.integers(0, 300), min_size=5, max_size=40),
    st.sampled_from([0.1, 0.25, 0.5, 0.9]),
)
def test_days_by_chance_are_the_median_unbiased_quantiles(days, chance):
    found = forecast.days_by_chance([*map(float, days), np.nan], (chance,))[0]
    assert found == pytest.approx(plain_quantile(days, chance))
    assert found == pytest.approx(
        np.quantile(days, chance, method="median_unbiased"), abs=1e-9
    )


def test_years_in_which_a_thing_never_came_stay_in_the_count():
    days = [10.0, 12.0, 14.0, np.inf, np.inf, np.inf]
    early, middle, late = forecast.days_by_chance(days)
    assert early == 10.0
    assert np.isinf(middle) and np.isinf(late)


def test_below_five_years_no_odds_are_told():
    assert np.isnan(forecast.days_by_chance([1.0, 2.0, 3.0, 4.0])).all()
    assert np.isnan(forecast.share_of_years([True] * 4, [True] * 4))


def test_29_february_is_the_28th_in_other_years():
    there = forecast.align(
        first_day=dt.date(2019, 1, 1), days=800, on=[dt.date(2020, 2, 29)]
    )
    assert there.at[0].tolist() == [58, 424, 789]
    assert there.own[0].tolist() == [False, True, False]


@pytest.mark.shared_data
def test_the_weather_to_date_replaces_the_past():
    weather = urbana_weather()
    sown = dt.date(2010, 6, 1)
    stand = planting(sown, kinds=[TENDER])
    early = outlook(stand, weather, sown).stage(StageName.CLOSED)
    late = outlook(stand, weather, dt.date(2010, 6, 25)).stage(StageName.CLOSED)
    assert early.spread is SpreadOf.YEARS and early.early < early.late
    # Once the heat is read, every year says the same.
    assert late.early == late.on == late.late
    assert early.early - dt.timedelta(3) <= late.on <= early.late + dt.timedelta(3)


@pytest.mark.shared_data
def test_an_observation_replaces_the_forecast_from_that_stage_on():
    sown = dt.date(2010, 7, 10)
    seen = Observation(dt.date(2010, 8, 13), Seen.FIRST_FLOWER)
    blind = outlook(planting(sown, kinds=[TENDER]), urbana_weather(), TODAY)
    told = outlook(
        planting(sown, kinds=[TENDER], observations=(seen,)), urbana_weather(), TODAY
    )
    first = told.stage(StageName.FIRST_FLOWER)
    assert (first.on, first.how) == (seen.on, How.OBSERVED)
    moved = seen.on - blind.stage(StageName.FIRST_FLOWER).on
    for name in (StageName.FULL_BLOOM, StageName.VIABLE_SEED):
        assert told.stage(name).on == blind.stage(name).on + moved
    assert told.stage(StageName.EMERGED).on == blind.stage(StageName.EMERGED).on


def test_without_weather_dates_go_by_days_and_it_is_said():
    told = outlook(planting(dt.date(2010, 7, 10), kinds=[TENDER]), None, TODAY)
    assert told.stage(StageName.FULL_BLOOM).on == dt.date(2010, 8, 14)
    assert Caveat.NO_WEATHER in told.caveats and Caveat.BY_DAYS in told.caveats
    assert told.kill is None or told.kill.chance is None


@pytest.mark.shared_data
def test_of_three_years_no_odds_are_told_and_it_is_said():
    weather = urbana_weather(2008, 2010)
    told = outlook(planting(dt.date(2010, 7, 10), kinds=[TENDER]), weather, TODAY)
    assert Caveat.TOO_FEW_YEARS in told.caveats
    assert told.stage(StageName.CLOSED).how is not How.HEAT
    assert told.kill.likely is None and told.kill.chance is None


@pytest.mark.shared_data
def test_a_gap_of_a_month_leaves_out_the_years_it_spoils():
    whole = urbana_weather()
    low = whole.tmin_c.copy()
    start = (dt.date(1995, 7, 10) - whole.first).days
    low[start : start + 31] = np.nan
    gappy = Weather("gap", whole.first, low, whole.tmax_c, whole.rain_mm)
    stand = planting(None, planned_on=dt.date(2010, 7, 10), kinds=[TENDER])
    full = outlook(stand, whole, TODAY).stage(StageName.CLOSED)
    thin = outlook(stand, gappy, TODAY).stage(StageName.CLOSED)
    assert thin.years == full.years - 1


@pytest.mark.shared_data
def test_nothing_read_after_the_day_one_looks_from_is_used():
    weather = urbana_weather()
    spoilt = Weather(
        "spoilt",
        weather.first,
        *(
            np.where(np.arange(len(weather)) > weather.index(TODAY), 40.0, row)
            for row in (weather.tmin_c, weather.tmax_c, weather.rain_mm)
        ),
    )
    stand = planting(dt.date(2010, 6, 20), kinds=[TENDER])
    assert outlook(stand, weather, TODAY) == outlook(stand, spoilt, TODAY)


@pytest.mark.shared_data
def test_a_stand_is_foretold_in_hindsight_without_its_own_weather():
    sown = dt.date(2010, 6, 1)
    seen = (
        Observation(dt.date(2010, 6, 5), Seen.EMERGED),
        Observation(dt.date(2010, 7, 4), Seen.FIRST_FLOWER),
    )
    rows = hindsight(
        [planting(sown, kinds=[TENDER], observations=seen)],
        weather=urbana_weather(),
        assumptions=under(None, TODAY).assumptions,
    )
    late = {row.told.name: row.late_days for row in rows}
    # Figures in print: up on day 4, first flower on day 30.
    assert late == {StageName.EMERGED: 0, StageName.FIRST_FLOWER: 3}
    record = {row.name: row for row in records_of(rows)}
    assert record[StageName.FIRST_FLOWER].mean_miss_days == 3
    assert record[StageName.FIRST_FLOWER].inside == 1


# Published first-freeze rows, NOAA 1981-2010 normals, 32 °F: P50 and P90 as month
# and day; tolerance is the spread of stations around the published rows.
@pytest.mark.shared_data
@pytest.mark.parametrize(
    ("weather", "middle", "late"),
    [
        (urbana_weather, (10, 18), (10, 31)),
        (clemson_weather, (11, 3), (11, 21)),
    ],
)
def test_frost_odds_from_the_ensemble_lie_by_the_published_rows(weather, middle, late):
    today = dt.date(2010, 12, 31)
    stand = planting(None, planned_on=dt.date(2011, 8, 1), kinds=[TENDER])
    kill = outlook(stand, weather(), today).kill
    assert kill.years == 30
    assert abs((kill.likely - dt.date(2011, *middle)).days) <= 7
    assert abs((kill.late - dt.date(2011, *late)).days) <= 9


def test_a_sky_without_weather_has_no_years():
    sky = Sky(None, today=TODAY)
    assert sky.days == 0 and sky.aligned([TODAY]).at.shape == (1, 0)
