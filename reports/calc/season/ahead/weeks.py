"""Warmth before a day and rain after it, over the years on record."""

from __future__ import annotations

import datetime as dt
from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from reports.calc import forecast
from reports.calc.season.ahead.sky import Sky

Days = NDArray[np.float64]


def share_warm(
    sky: Sky, on: Sequence[dt.date], *, least_c: float, over_days: int
) -> Days:
    """Return the share of years in which the days before were warm on average."""
    weather = sky.weather
    if weather is None:
        return np.full(len(on), np.nan)
    mean = forecast.made_good(
        (weather.tmin_c + weather.tmax_c) / 2, first_day=weather.first
    )
    sums = np.concatenate(([0.0], np.cumsum(np.nan_to_num(mean))))
    aligned = sky.aligned(on)
    at = aligned.at
    known = (at >= over_days) & (at <= sky.days) & ~aligned.own
    stop = np.clip(at, over_days, sky.days)
    warmth = (sums[stop] - sums[stop - over_days]) / over_days
    return forecast.share_of_years(warmth >= least_c, known)


def share_rain(
    sky: Sky, on: Sequence[dt.date], *, least_mm: float, over_days: int
) -> Days:
    """Return the share of years with rain enough in the days from then on."""
    weather = sky.weather
    if weather is None:
        return np.full(len(on), np.nan)
    rain = weather.rain_mm
    sums, gaps = forecast.running(rain), forecast.running(np.isnan(rain))
    aligned = sky.aligned(on)
    at = aligned.at
    start = np.clip(at, 0, max(sky.days - over_days, 0))
    stop = np.minimum(start + over_days, sky.days)
    known = (at >= 0) & (at + over_days <= sky.days) & ~aligned.own
    known &= gaps[stop] == gaps[start]
    return forecast.share_of_years(sums[stop] - sums[start] >= least_mm, known)


def rain_read(sky: Sky, first: dt.date, days: int) -> float | None:
    """Return the rain that came in some days, None where any was not read. [mm]"""
    weather = sky.weather
    if weather is None:
        return None
    start = weather.index(first)
    if start < 0 or start + days > sky.days:
        return None
    total = float(weather.rain_mm[start : start + days].sum())
    return None if np.isnan(total) else total
