"""A station's readings as a plain table, as it can be read again."""

from __future__ import annotations

import csv
import datetime as dt
import io
from collections.abc import Iterable
from decimal import Decimal

HEADER = ("date", "tmin_c", "tmax_c", "rain_mm")
Day = tuple[dt.date, float | None, float | None, float | None]


def days_as_text(days: Iterable[Day]) -> str:
    """RFC 4180 text with every digit of every reading; a gap is an empty cell."""
    out = io.StringIO()
    writer = csv.writer(out)
    writer.writerow(HEADER)
    writer.writerows(
        [day.isoformat(), *(digits(value) for value in readings)]
        for day, *readings in days
    )
    return out.getvalue()


def digits(value: float | None) -> str:
    """Every digit without an exponent, which no reader of weather files expects."""
    return "" if value is None else format(Decimal(str(value)), "f")
