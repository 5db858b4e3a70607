"""Windows: the published timetable, the odds, and what cannot be said."""

import datetime as dt
from dataclasses import replace

import numpy as np
import pytest

from reports.calc import windows
from reports.calc.season.ahead.sowing import sow_window
from reports.calc.season.ahead.weeks import rain_read, share_rain
from reports.calc.shapes.ahead import Caveat, Why, WindowKind, WindowState
from reports.calc.shapes.ledger import Observation, Seen, Weather
from reports.calc.shapes.season import StageName
from tests.calc.ahead import TENDER, outlook, under, urbana_weather
from tests.calc.builders import LETTUCE, RYE, planting

TODAY = dt.date(2010, 7, 1)
SOWN = dt.date(2010, 7, 10)


def day(month, of, year=2010):
    return dt.date(year, month, of)


@pytest.mark.shared_data
def test_buckwheat_sown_on_10_july_keeps_to_the_published_timetable():
    # Cornell buckwheat handbook, keys to success (CORN-HB-KEY): full bloom on day
    # 35, mow until day 40, till until day 45.
    told = outlook(planting(SOWN, kinds=[TENDER]), urbana_weather(), TODAY)
    assert told.stage(StageName.FULL_BLOOM).on == day(8, 14)
    assert told.window(WindowKind.END_MOWING).closes == day(8, 19)
    assert told.window(WindowKind.END_WORKING_IN).closes == day(8, 24)


def test_it_is_ended_seven_to_ten_days_after_first_flower():
    # OMAFRA-BW, and common practice.
    found = windows.end_days(
        first_flower=day(8, 9), after_days=(7, 10), viable_seed=day(8, 24)
    )
    assert (found.opens, found.closes) == (day(8, 16), day(8, 19))


def test_it_is_ended_before_its_seed_can_sprout():
    found = windows.end_days(
        first_flower=day(8, 9), after_days=(7, 10), viable_seed=day(8, 18)
    )
    assert (found.closes, found.closes_why) == (day(8, 17), Why.SEED_CAN_SPROUT)


def test_it_may_be_cut_until_a_quarter_is_in_bloom():
    # Common practice: 25 % bloom; a line from first flower to half in bloom.
    told = outlook(planting(SOWN, kinds=[TENDER]), None, TODAY)
    cut = told.window(WindowKind.CUT)
    assert (cut.closes, cut.closes_why) == (day(8, 10), Why.BLOOM_LIMIT)


def test_bloom_seen_past_the_limit_closes_the_cut():
    seen = Observation(day(8, 5), Seen.BLOOM, bloom_share=0.3)
    told = outlook(planting(SOWN, kinds=[TENDER], observations=(seen,)), None, TODAY)
    assert told.window(WindowKind.CUT).closes == day(8, 4)


@pytest.mark.shared_data
def test_sowing_opens_with_warm_soil_and_closes_before_frost():
    window = sow_window(TENDER, under(urbana_weather(), TODAY), first=day(3, 1))
    assert window.opens_why is Why.SOIL_COLD
    assert window.closes_why is Why.FROST_BEFORE_BLOOM
    assert day(5, 15) < window.opens < window.closes < day(9, 15)
    assert window.chance >= 0.8 and window.years >= 29


@pytest.mark.shared_data
def test_the_last_day_to_sow_is_what_a_plain_count_of_years_gives():
    weather, wanted = urbana_weather(), 0.8
    growing = under(weather, day(12, 31))
    window = sow_window(TENDER, growing, first=day(7, 1, 2011), wanted=wanted)

    def share(sown):
        """Years, of thirty, without frost from the fourth day to the 35th."""
        safe = 0
        for year in range(1981, 2011):
            first = (sown.replace(year=year) - weather.first).days
            spell = weather.tmin_c[first + 4 : first + 36]
            safe += not np.any(np.rint(spell * 1.8 + 32) <= 32)
        return safe / 30

    assert share(window.closes) >= wanted > share(window.closes + dt.timedelta(1))


@pytest.mark.shared_data
def test_more_certainty_wanted_means_an_earlier_last_day():
    growing = under(urbana_weather(), TODAY)
    last = [
        sow_window(TENDER, growing, first=TODAY, wanted=chance).closes
        for chance in (0.5, 0.8, 0.95)
    ]
    assert last[0] > last[1] > last[2]


@pytest.mark.shared_data
def test_a_sowing_past_every_window_says_so():
    growing = under(urbana_weather(), TODAY)
    stand = planting(day(5, 1), kinds=[TENDER])
    assert Caveat.PAST_EVERY_WINDOW in outlook(stand, urbana_weather(), TODAY).caveats
    window = sow_window(TENDER, growing, first=TODAY, wanted=1.0)
    assert window.closes is None or window.closes < day(10, 1)


@pytest.mark.shared_data
def test_days_that_are_next_years_are_told_to_be():
    growing = under(urbana_weather(), TODAY)
    late, early = day(9, 15), day(3, 1)
    window = sow_window(TENDER, growing, first=late)
    assert window.opens.year == late.year + 1 and window.is_next_years
    assert not sow_window(TENDER, growing, first=early).is_next_years


def steady(tmin, tmax, years=12, first=dt.date(2000, 1, 1)):
    days = round(365.25 * years)
    fill = [np.full(days, value) for value in (tmin, tmax, 1.0)]
    return Weather("Made up", first, *fill)


def test_where_it_never_freezes_there_is_no_last_day_and_no_frost_is_told():
    weather = steady(15.0, 25.0)
    today = dt.date(2011, 6, 1)
    window = sow_window(TENDER, under(weather, today), first=today)
    assert window.closes is None and window.closes_why is Why.NO_END_IN_A_YEAR
    assert Caveat.NO_FROST_ON_RECORD in window.caveats
    told = outlook(planting(today, kinds=[TENDER]), weather, today)
    assert told.kill.chance == 0 and told.kill.likely is None
    assert Caveat.NO_FROST_ON_RECORD in told.caveats


def test_where_it_is_never_warm_enough_no_day_will_do():
    today = dt.date(2011, 6, 1)
    window = sow_window(TENDER, under(steady(2.0, 8.0), today), first=today)
    assert window.opens is None and Caveat.PAST_EVERY_WINDOW in window.caveats


def test_without_weather_no_days_to_sow_are_told():
    window = sow_window(TENDER, under(None, TODAY), first=TODAY)
    assert window.opens is None and window.chance is None
    assert Caveat.NO_WEATHER in window.caveats


@pytest.mark.shared_data
def test_south_of_the_equator_the_seasons_are_the_stations_own():
    north = urbana_weather()
    half = 184
    south = Weather(
        "South",
        north.first,
        *(np.roll(row, half) for row in (north.tmin_c, north.tmax_c, north.rain_mm)),
    )
    today = dt.date(2010, 1, 1)
    growing = under(south, today, southern=True)
    window = sow_window(TENDER, growing, first=today)
    assert Caveat.SOUTHERN_FIGURES in window.caveats
    assert dt.date(2010, 2, 1) < window.closes < dt.date(2010, 4, 1)
    # First seed by day 40 is for July in the north, January in the south.
    told = outlook(
        planting(dt.date(2010, 1, 10), kinds=[TENDER]), south, today, southern=True
    )
    assert told.stage(StageName.FIRST_SEED).on == dt.date(2010, 2, 19)


def test_a_kind_without_figures_says_what_it_cannot_say():
    told = outlook(planting(SOWN, kinds=[LETTUCE]), None, TODAY)
    assert told.window(WindowKind.CUT) is None
    assert Caveat.BLOOM_UNKNOWN in told.caveats and Caveat.SEED_UNKNOWN in told.caveats


@pytest.mark.shared_data
def test_a_kind_that_no_figure_kills_is_held_to_a_hard_freeze_and_says_so():
    window = sow_window(RYE, under(urbana_weather(), TODAY), first=TODAY)
    assert {Caveat.KILL_ASSUMED, Caveat.BLOOM_UNKNOWN} <= set(window.caveats)
    assert window.closes_why is Why.FROST_BEFORE_COVER


@pytest.mark.shared_data
def test_the_next_crop_waits_longer_where_residue_is_worked_in():
    told = outlook(planting(SOWN, kinds=[TENDER]), urbana_weather(), TODAY)
    worked_in = told.window(WindowKind.LARGE_SEED_WORKED_IN)
    # A week after light working in: CORN-HB-IDLE, HT2013.
    assert worked_in.opens == day(8, 24) + dt.timedelta(7)
    assert told.window(WindowKind.PLANTS_ON_TOP).opens == day(8, 19)


@pytest.mark.shared_data
def test_a_stand_let_seed_comes_again_and_covers_until_frost():
    told = outlook(planting(day(6, 1), kinds=[TENDER]), urbana_weather(), TODAY)
    second = told.window(WindowKind.SELF_SOWN)
    assert second.opens == day(6, 1) + dt.timedelta(77 + 4)
    assert second.closes == told.kill.likely - dt.timedelta(1)


@pytest.mark.shared_data
def test_whether_seed_is_ripe_before_frost_is_a_share_of_the_years():
    early = outlook(planting(SOWN, kinds=[TENDER]), urbana_weather(), TODAY)
    late = outlook(
        planting(None, planned_on=day(9, 5), kinds=[TENDER]), urbana_weather(), TODAY
    )
    assert early.kill.seed_first == 1.0
    assert 0 < late.kill.seed_first < 0.5


def test_a_frost_already_read_is_the_day_it_died():
    weather = steady(15.0, 25.0)
    cold = weather.tmin_c.copy()
    died = dt.date(2011, 6, 20)
    cold[weather.index(died)] = -1.0
    weather = replace(weather, tmin_c=cold)
    told = outlook(
        planting(dt.date(2011, 6, 1), kinds=[TENDER]), weather, dt.date(2011, 7, 1)
    )
    assert told.kill.early == told.kill.likely == told.kill.late == died


@pytest.mark.shared_data
def test_the_chance_of_rain_in_a_week_is_a_plain_count_of_years():
    weather, on = urbana_weather(), dt.date(2011, 7, 1)
    growing = under(weather, day(12, 31))
    wet = known = 0
    for year in range(1981, 2011):
        first = (on.replace(year=year) - weather.first).days
        week = weather.rain_mm[first : first + 7]
        if not np.isnan(week).any():
            known += 1
            wet += week.sum() >= 10
    (found,) = share_rain(growing.sky, [on], least_mm=10, over_days=7)
    assert found == pytest.approx(wet / known)
    assert rain_read(growing.sky, on, 7) is None
    week = weather.rain_mm[weather.index(day(7, 1)) :][:7].sum()
    assert rain_read(growing.sky, day(7, 1), 7) == pytest.approx(week)


@pytest.mark.parametrize(
    ("today", "state"),
    [
        (day(7, 1), WindowState.LATER),
        (day(7, 3), WindowState.OPENING),
        (day(7, 10), WindowState.OPEN),
        (day(7, 24), WindowState.CLOSING),
        (day(7, 31), WindowState.CLOSING),
        (day(8, 1), WindowState.MISSED),
        (day(8, 22), WindowState.OVER),
    ],
)
def test_a_window_is_later_opening_open_closing_missed_and_over(today, state):
    assert windows.state_of(day(7, 10), day(7, 31), today=today) is state


def test_a_run_of_good_days_is_bounded_by_what_held_its_neighbours_back():
    found = windows.sow_days(
        first=day(5, 1),
        grows=[0.2, 0.9, 0.9, 0.9, 0.1],
        warm=[1.0, 0.3, 0.9, 0.9, 0.9],
        wanted=0.8,
    )
    assert (found.opens, found.closes) == (day(5, 3), day(5, 4))
    assert (found.opens_why, found.closes_why) == (
        Why.SOIL_COLD,
        Why.FROST_BEFORE_BLOOM,
    )


def test_no_good_day_is_no_window():
    assert windows.sow_days(first=TODAY, grows=[0.5], warm=[1.0], wanted=0.8) is None


@pytest.mark.parametrize("wanted", [-0.1, 1.1])
def test_a_chance_is_a_share(wanted):
    with pytest.raises(ValueError, match="chance"):
        windows.sow_days(first=TODAY, grows=[0.5], warm=[1.0], wanted=wanted)
