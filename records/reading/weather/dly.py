"""NOAA's daily archive, fixed width: one line a station, month and element.

After the official readme of GHCN-Daily, version 3.26.
"""

import datetime as dt
import re
from calendar import monthrange
from collections.abc import Iterator

from records.reading.weather.archive import CODES, MISSING, take
from records.reading.weather.gather import Station
from records.reading.weather.shapes import Trouble, WeatherFileError

_HEAD = re.compile(r"([A-Z]{2}[A-Z0-9_-]{9})([12][0-9]{3})([0-9]{2})([A-Z0-9]{4})")
_GROUP = 8
_START = 21
# Editors strip the blanks of the last three marks; no more may be missing.
_SHORTEST = _START + 30 * _GROUP + 5


def is_dly(first_line: str) -> bool:
    """Tell a file of this kind by its first line."""
    return bool(_HEAD.match(first_line))


def read_dly(text: str) -> list[Station]:
    """Return the stations of the file, with flagged values dropped and counted."""
    stations: dict[str, Station] = {}
    for number, raw in enumerate(text.split("\n"), 1):
        line = raw.rstrip("\r")
        if line.strip():
            _read_line(line, number, stations)
    return list(stations.values())


def _read_line(line: str, number: int, stations: dict[str, Station]) -> None:
    head = _HEAD.match(line)
    if head is None or len(line) < _SHORTEST:
        raise WeatherFileError(Trouble.TRUNCATED, line=number, found=line[-20:])
    name, year, month, code = head.groups()
    station = stations.setdefault(name, Station(name))
    if code not in CODES:
        return
    if not 1 <= int(month) <= 12:
        raise WeatherFileError(Trouble.BAD_DATE, line=number, found=f"{year}-{month}")
    length = monthrange(int(year), int(month))[1]
    for number_of_day, value, mark, flag in _groups(line):
        if number_of_day <= length:
            day = dt.date(int(year), int(month), number_of_day)
            take(station, day, code, value, mark=mark, flag=flag, line=number)
        elif value != MISSING:
            found = f"{year}-{month}-{number_of_day}"
            raise WeatherFileError(Trouble.BAD_DATE, line=number, found=found)


def _groups(line: str) -> Iterator[tuple[int, str, str, str]]:
    """Yield day of the month, value, mark and flag."""
    for day in range(1, 32):
        start = _START + (day - 1) * _GROUP
        group = line[start : start + _GROUP].ljust(_GROUP)
        yield day, group[:5].strip(), group[5].strip(), group[6].strip()
