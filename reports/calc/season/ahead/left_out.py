"""Years of a station's record that are left out of a date, and why."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np
from numpy.typing import NDArray

from reports.calc.season.ahead.sky import Sky
from reports.calc.shapes.ahead import LeftOut, WhyOut

Days = NDArray[np.float64]


def years_left_out(sky: Sky) -> tuple[LeftOut, ...]:
    """Return the years that do not, or not always, stand in for the days ahead."""
    return tuple(_out(sky))


def _out(sky: Sky) -> Iterator[LeftOut]:
    weather = sky.weather
    if weather is None:
        return
    years = sky.aligned([sky.today]).years
    unread = np.isnan(weather.tmin_c) | np.isnan(weather.tmax_c)
    dates = np.datetime64(weather.first, "D") + np.arange(len(weather))
    of_year = dates.astype("datetime64[Y]").astype(np.int64) + 1970
    for year in years.tolist():
        count = int(np.count_nonzero(unread & (of_year == year)))
        if year == sky.today.year:
            yield LeftOut(year, WhyOut.THIS_YEAR, count)
        elif count:
            yield LeftOut(year, WhyOut.GAPS, count)
        elif year == weather.first.year and weather.first.timetuple().tm_yday > 1:
            yield LeftOut(year, WhyOut.BEGINS, 0)


def gap_years(sky: Sky) -> NDArray[np.bool_]:
    """Return, for each year of the record, whether days of it were not read. (y,)"""
    gaps = {row.year for row in _out(sky) if row.why is WhyOut.GAPS}
    years = sky.aligned([sky.today]).years
    return np.array([year in gaps for year in years.tolist()], dtype=bool)


def spoilt_years(sky: Sky, gaps: NDArray[np.bool_], told: Days) -> tuple[int, ...]:
    """Return the years with days not read that tell nothing here. (y,)"""
    if len(told) != len(gaps) or not gaps.any():
        return ()
    years = sky.aligned([sky.today]).years
    return tuple(years[np.isnan(told) & gaps].tolist())
