"""Frosts read at the station in a season."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterable

import numpy as np

from reports.calc.frost import year_frosts
from reports.calc.shapes.basics import Span
from reports.calc.shapes.ledger import Weather
from reports.calc.shapes.season import FrostLine, FrostSummary

HALF_YEAR = dt.timedelta(days=184)  # 1 July to 1 January
THRESHOLDS_F = (36, 32, 28)  # °F: frost, freeze, hard freeze, [NCEI-NORMALS]


def frosts_in(
    weather: Weather | None, season: Span, *, southern: bool = False
) -> FrostSummary | None:
    """Return the frosts of a season, None where no minimum was read in it.

    In the south the readings are dated half a year on while they are looked through,
    so that July is their January, and the days found are dated back.
    """
    if weather is None:
        return None
    start = max(weather.index(season.first), 0)
    stop = min(weather.index(season.last) + 1, len(weather))
    if stop <= start or np.all(np.isnan(weather.tmin_c[start:stop])):
        return None
    lowest = start + int(np.nanargmin(weather.tmin_c[start:stop]))
    return FrostSummary(
        lines=tuple(_line(weather, season, f, southern) for f in THRESHOLDS_F),
        lowest_c=float(weather.tmin_c[lowest]),
        lowest_on=weather.day(lowest),
    )


def _line(
    weather: Weather, season: Span, threshold_f: int, southern: bool
) -> FrostLine:
    on = HALF_YEAR if southern else dt.timedelta(0)
    # The southern summer of a season may have begun in the year before.
    start = season.first.year - southern
    first = max(weather.index(dt.date(start, 1, 1)), 0)
    stop = weather.index(dt.date(season.last.year, 12, 31)) + 1
    years = year_frosts(
        first_day=weather.day(first) + on,
        tmin_c=weather.tmin_c[first:stop],
        threshold_f=threshold_f,
    )
    return FrostLine(
        temp_c=(threshold_f - 32) / 1.8,
        last_spring=_within(season, (year.last_spring for year in years), on),
        first_fall=_within(season, (year.first_fall for year in years), on),
    )


def _within(
    season: Span, days: Iterable[dt.date | None], on: dt.timedelta
) -> dt.date | None:
    dated = (day - on for day in days if day is not None)
    return next((day for day in dated if day in season), None)
