"""What a season says where weather is missing."""

import numpy as np
import pytest

from reports.calc.shapes.basics import How
from reports.calc.shapes.choice import Reason
from reports.calc.shapes.season import (
    StageName,
)
from tests.calc.builders import (
    day,
    ended,
    field,
    one_planting,
    planting,
    season_of,
    summer,
)
from tests.calc.season.stands import (
    choice,
    heavy,
)


def test_without_weather_half_lives_of_the_calendar_stand_in() -> None:
    # A humid summer: 65 days on top, 35 worked in, labelled as ours.
    both = choice(heavy(ended(day(8, 14))), weather=None)
    assert both.on_top.half_life_days == 65
    assert both.worked_in.half_life_days == 35
    assert Reason.NO_WEATHER in both.reasons


def test_without_weather_buckwheat_closes_by_days() -> None:
    closed = one_planting(planting(day(7, 1))).stage(StageName.CLOSED)
    assert closed is not None
    assert (closed.on, closed.how) == (day(7, 22), How.ASSUMED)


def test_a_short_record_says_that_weather_ends_before_the_curve() -> None:
    short = summer(day(6, 1), 90)
    both = choice(heavy(ended(day(8, 14))), weather=short)
    assert Reason.WEATHER_ENDS_BEFORE_CURVE in both.reasons
    assert Reason.NO_WEATHER not in both.reasons


def test_days_off_the_record_take_the_same_days_of_other_years() -> None:
    ends_in_august = summer(day(1, 1, 2023), (day(8, 14) - day(1, 1, 2023)).days)
    by_mean = choice(heavy(ended(day(8, 14))), weather=ends_in_august)
    by_record = choice(heavy(ended(day(8, 14))))
    # Rain every third day evens out over the years, so the two differ by little.
    assert by_mean.on_top.half_life_days == pytest.approx(
        by_record.on_top.half_life_days, abs=3
    )


def test_missing_readings_and_days_off_the_record_are_told() -> None:
    weather = summer(day(3, 1), 200)
    weather.tmin_c[10] = np.nan
    weather.rain_mm[20] = np.nan
    page = season_of(field(), weather=weather)
    assert (page.missing_days, page.days_without_weather) == (2, 165)
    assert (page.weather_first, page.weather_last) == (day(3, 1), day(9, 16))


def test_the_frosts_of_the_season_are_told() -> None:
    weather = summer(day(1, 1), 365)
    weather.tmin_c[weather.index(day(5, 2))] = -1.0
    weather.tmin_c[weather.index(day(10, 4))] = -4.0
    frost = season_of(field(), weather=weather).frost
    assert frost is not None
    by_temp = {round(line.temp_c, 1): line for line in frost.lines}
    assert by_temp[0.0].last_spring == day(5, 2)
    assert by_temp[0.0].first_fall == day(10, 4)
    assert by_temp[-2.2].last_spring is None
    assert (frost.lowest_c, frost.lowest_on) == (-4.0, day(10, 4))
