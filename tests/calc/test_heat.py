"""Degree days against published columns and independent programs."""

from datetime import date

import numpy as np
import pytest

from reports.calc.heat import (
    HeatMethod,
    day_reaching,
    degree_days,
    missing_between,
    running_total,
    sum_between,
)
from tests.calc.stations import Readings, seattle, urbana


def to_f(temp_c):
    return np.asarray(temp_c) * 9 / 5 + 32


def to_c(temp_f):
    return (np.asarray(temp_f, dtype=float) - 32) * 5 / 9


def in_fahrenheit(high, low, base, upper=None, method=HeatMethod.CLAMPED):
    """Degree days of one day given and returned in °F, computed in °C."""
    daily = degree_days(
        tmin_c=[to_c(low)],
        tmax_c=[to_c(high)],
        base_c=float(to_c(base)),
        upper_c=None if upper is None else float(to_c(upper)),
        method=method,
    )
    return daily[0] * 9 / 5


@pytest.mark.parametrize(
    ("high", "low", "sum_f"), [(90, 65, 25.5), (72, 46, 11), (63, 42, 6.5)]
)
def test_three_days_agree_with_the_wisconsin_extension_column(high, low, sum_f):
    """UW Extension, corn degree days between 50 and 86 °F; the column sums to 43."""
    assert in_fahrenheit(high, low, 50, 86) == pytest.approx(sum_f)


@pytest.mark.parametrize(("high", "low", "sum_f"), [(70, 50, 10), (100, 90, 36)])
def test_a_mild_day_gives_ten_and_no_day_gives_more_than_thirty_six(high, low, sum_f):
    """Iowa State University, corn degree days between 50 and 86 °F."""
    assert in_fahrenheit(high, low, 50, 86) == pytest.approx(sum_f)


@pytest.mark.parametrize(("high", "low", "sum_f"), [(65, 40, 2.5), (60, 35, 0)])
def test_the_plain_average_agrees_with_michigan_state(high, low, sum_f):
    """Michigan State University, base 50 °F, plain average."""
    found = in_fahrenheit(high, low, 50, method=HeatMethod.AVERAGE)
    assert found == pytest.approx(sum_f)


def test_a_mean_of_64_above_53_is_eleven_degree_days():
    """University of California integrated pest management, base 53 °F."""
    assert in_fahrenheit(78, 50, 53, method=HeatMethod.AVERAGE) == pytest.approx(11)


def test_setting_the_cold_reading_first_never_gives_less():
    """McMaster and Wilhelm 1997: method 2 is never below method 1."""
    low, high = np.meshgrid(np.arange(-20, 30), np.arange(-20, 45))
    limits = {"tmin_c": low.ravel(), "tmax_c": high.ravel(), "base_c": 5.0}
    first = degree_days(method=HeatMethod.AVERAGE, **limits)
    second = degree_days(method=HeatMethod.CLAMPED, **limits)
    told = ~np.isnan(first)
    assert np.all(second[told] >= first[told])
    cold_night = low.ravel() < 5
    assert np.all(second[told & ~cold_night] == first[told & ~cold_night])


@pytest.mark.parametrize(
    ("high", "low", "sum_f"),
    [(70, 40, 7.542448820632495), (60, 44, 3.626479), (60, 40, 3.1831)],
)
def test_the_single_sine_agrees_with_an_independent_library_in_fahrenheit(
    high, low, sum_f
):
    """The gddPy 1.0.3 Baskerville-Emin figures, base 50 °F; the third by hand."""
    found = in_fahrenheit(high, low, 50, method=HeatMethod.SINE)
    assert found == pytest.approx(sum_f, abs=5e-5)


@pytest.mark.parametrize(
    ("high", "low", "base", "upper", "total"),
    [
        (20, 10, 14, None, 2.12348782),
        (14, 7, 12, 33, 0.4681),
        (46, 10, 14, 26, 7.807),
        (20, 10, 22, 30, 0.0),
        (20, 15, 10, 30, 7.5),
        (40, 35, 10, 30, 20.0),
    ],
)
def test_the_single_sine_agrees_with_open_degree_day_packages(
    high, low, base, upper, total
):
    """Two R packages' examples; the third by hand, as the first package errs there."""
    found = degree_days(
        tmin_c=[low],
        tmax_c=[high],
        base_c=base,
        upper_c=upper,
        method=HeatMethod.SINE,
    )
    assert found[0] == pytest.approx(total, abs=5e-4)


SEATTLE_AVERAGE = [
    (10.0, 1.0, [1133.4, 1369.25, 1490.2, 1541.05]),
    (5.0, 1.0, [2396.2, 2720.7, 2941.3, 3017.95]),
    (40 / 9, 1.8, [4634.8, 5223.3, 5629.4, 5769.0]),
    (10.0, 1.8, [2040.1, 2464.7, 2682.4, 2773.9]),
]


def seattle_by_year(**how):
    weather = seattle()
    running = running_total(
        degree_days(tmin_c=weather.tmin, tmax_c=weather.tmax, **how)
    )
    starts = [(date(year, 1, 1) - weather.first_day).days for year in range(2012, 2017)]
    return [
        sum_between(running, start=start, stop=stop)
        for start, stop in zip(starts, starts[1:], strict=False)
    ]


@pytest.mark.parametrize(("base_c", "degree", "sums"), SEATTLE_AVERAGE)
def test_four_seattle_years_by_the_plain_average_agree_with_xclim(base_c, degree, sums):
    """xclim 0.62.0 growing_degree_days; vega-datasets' Seattle readings."""
    found = seattle_by_year(base_c=base_c, method=HeatMethod.AVERAGE)
    assert np.array(found) * degree == pytest.approx(sums, abs=0.051)


@pytest.mark.parametrize(
    ("how", "sums"),
    [
        ({"base_c": 10.0, "upper_c": 30.0}, [2269.2, 2688.6, 2899.2, 3001.5]),
        (
            {"base_c": 10.0, "method": HeatMethod.SINE},
            [2163.06, 2585.26, 2807.54, 2909.00],
        ),
    ],
)
def test_four_seattle_years_in_fahrenheit_days_by_limits_and_by_sine(how, sums):
    """Sums between 50 and 86 °F, and by single sine above 50 °F (gddPy's method)."""
    assert np.array(seattle_by_year(**how)) * 1.8 == pytest.approx(sums, abs=0.051)


@pytest.mark.parametrize(
    ("first", "last", "missing", "sums"),
    [
        (date(1995, 8, 20), date(1995, 11, 15), 0, [1635.6, 2257.6, 945.5]),
        (date(1990, 9, 15), date(1991, 4, 30), 1, [1630.9, 2839.3, 637.5]),
        (date(2005, 10, 1), date(2006, 5, 10), 1, [1559.6, 2741.0, 621.1]),
    ],
)
def test_cover_crop_windows_at_urbana_sum_as_counted_by_hand(
    first, last, missing, sums
):
    """NOAA daily readings USC00118740, plain average, base 40, 32 and 50 °F."""
    weather: Readings = urbana(1981, 2013)
    start = (first - weather.first_day).days
    stop = (last - weather.first_day).days + 1
    for base_f, total in zip([40, 32, 50], sums, strict=True):
        daily = degree_days(
            tmin_c=weather.tmin,
            tmax_c=weather.tmax,
            base_c=float(to_c(base_f)),
            method=HeatMethod.AVERAGE,
        )
        running = running_total(daily)
        found = sum_between(running, start=start, stop=stop) * 1.8
        assert found == pytest.approx(total, abs=0.051)
        assert missing_between(running, start=start, stop=stop) == missing


def test_a_missing_or_impossible_day_is_counted_and_never_taken_as_zero():
    daily = degree_days(
        tmin_c=[5.0, np.nan, 5.0, 26.0], tmax_c=[25.0, 25.0, np.nan, 25.0], base_c=5.0
    )
    assert np.isnan(daily).tolist() == [False, True, True, True]
    running = running_total(daily)
    assert running.total.tolist() == [0, 10, 10, 10, 10]
    assert running.missing.tolist() == [0, 0, 1, 2, 3]


@pytest.mark.parametrize("method", list(HeatMethod))
def test_a_missing_reading_stays_missing_by_every_method(method):
    how = {"base_c": 10.0, "upper_c": 30.0, "method": method}
    daily = degree_days(tmin_c=[np.nan, 1.0], tmax_c=[3.0, np.nan], **how)
    assert np.isnan(daily).all()


def test_the_day_reaching_a_sum_is_the_first_by_whose_end_it_is_met():
    running = running_total([5.1] * 20)
    assert day_reaching(running, start=0, target=51.0) == 9
    assert day_reaching(running, start=3, target=5.1) == 3
    assert day_reaching(running, start=3, target=5.2) == 4
    assert day_reaching(running, start=3, target=0.0) == 3
    assert day_reaching(running, start=0, target=103.0) is None
    assert day_reaching(running, start=20, target=0.0) is None


def test_a_span_outside_the_record_is_refused():
    running = running_total([1.0, 2.0])
    for start, stop in [(-1, 1), (2, 1), (0, 3)]:
        with pytest.raises(ValueError, match="record"):
            sum_between(running, start=start, stop=stop)
        with pytest.raises(ValueError, match="record"):
            missing_between(running, start=start, stop=stop)
    with pytest.raises(ValueError, match="target"):
        day_reaching(running, start=0, target=-1.0)


def test_limits_that_cross_and_series_that_differ_are_refused():
    with pytest.raises(ValueError, match="upper_c"):
        degree_days(tmin_c=[1.0], tmax_c=[2.0], base_c=10.0, upper_c=10.0)
    with pytest.raises(ValueError, match="length"):
        degree_days(tmin_c=[1.0], tmax_c=[2.0, 3.0], base_c=10.0)
    with pytest.raises(ValueError, match="below 0"):
        running_total([-0.1])
