"""Days of the southern half of the earth, told by the seasons of the northern."""

from __future__ import annotations

import calendar
import datetime as dt

HALF_YEAR = 6  # months
LEAP_YEAR = 2000


def sown_as_if(day: dt.date, *, southern: bool) -> dt.date:
    """Return the day whose season figures in print would mean.

    Figures for a time of sowing are printed for the north: a sowing of 10 January in
    the south reads those of 10 July. The year stands only so that the day exists.
    """
    if not southern:
        return day
    month = (day.month + HALF_YEAR - 1) % 12 + 1
    last = calendar.monthrange(LEAP_YEAR, month)[1]
    return dt.date(LEAP_YEAR, month, min(day.day, last))
