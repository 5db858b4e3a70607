"""NOAA's daily archive by station: one line a station, day and element, no header."""

import re

from records.reading.weather.archive import CODES, take
from records.reading.weather.cells import read_date
from records.reading.weather.gather import Station
from records.reading.weather.shapes import DateOrder, Trouble, WeatherFileError
from records.reading.weather.table import rows_of

_FIELDS = 8
_FIRST = re.compile(r'"?[A-Z]{2}[A-Z0-9_-]{9}"?,"?[0-9]{8}"?,"?[A-Z0-9]{4}"?,')
_HEADER = re.compile(r'"?ID"?,"?DATE"?,"?ELEMENT"?,', re.IGNORECASE)


def is_by_station(first_line: str) -> bool:
    """Tell a file of this kind by its first line."""
    return bool(_FIRST.match(first_line) or _HEADER.match(first_line))


def read_by_station(text: str) -> list[Station]:
    """Return the stations of the file, with flagged values dropped and counted."""
    stations: dict[str, Station] = {}
    for line, row in rows_of(text, ","):
        if line == 1 and _HEADER.match(text):
            continue
        if len(row) != _FIELDS:
            short = len(row) < _FIELDS
            reason = Trouble.TRUNCATED if short else Trouble.RAGGED
            raise WeatherFileError(reason, line=line, found=",".join(row))
        name, date, code, value, mark, flag = (cell.strip() for cell in row[:6])
        station = stations.setdefault(name, Station(name))
        if code in CODES:
            day = read_date(date, DateOrder.YMD, line=line)
            take(station, day, code, value, mark=mark, flag=flag, line=line)
    return list(stations.values())
