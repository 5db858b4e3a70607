"""What the files of NOAA's daily archive have in common: codes, tenths and marks."""

import datetime as dt
import re

from records.reading.weather.gather import Station
from records.reading.weather.shapes import Element, Trouble, WeatherFileError

CODES = {element.value: element for element in Element}
MISSING = "-9999"
_PRESUMED_ZERO = "P"
_TENTHS = re.compile(r"-?[0-9]{1,6}")


def take(
    station: Station,
    day: dt.date,
    code: str,
    value: str,
    *,
    mark: str,
    flag: str,
    line: int,
) -> None:
    """Keep one value in tenths, unless missing or flagged by the archive's checks."""
    element = CODES[code]
    if value == MISSING:
        station.add(day, element, None, line=line)
        return
    if not _TENTHS.fullmatch(value):
        raise WeatherFileError(Trouble.BAD_NUMBER, line=line, found=value)
    if flag:
        station.flagged(day, element, flag, line=line)
        return
    if mark == _PRESUMED_ZERO:
        station.presumed_dry += 1
    station.add(day, element, int(value) / 10, line=line)
