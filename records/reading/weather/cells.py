"""Single cells: days and numbers as tables write them."""

import datetime as dt
import re

from farm.units import MM_PER_IN, c_from_f
from records.reading.weather.shapes import (
    DateOrder,
    RainUnit,
    TempUnit,
    Trouble,
    WeatherFileError,
)

_TIME = r"(?:[T ][0-9:.]+Z?)?"
_SPELLINGS = {
    DateOrder.ISO: (
        re.compile(rf"([0-9]{{4}})-([0-9]{{2}})-([0-9]{{2}}){_TIME}"),
        "ymd",
    ),
    DateOrder.YMD: (
        re.compile(
            r"([0-9]{4})(?:([0-9]{2})([0-9]{2})"
            rf"|[/.-]([0-9]{{1,2}})[/.-]([0-9]{{1,2}})){_TIME}"
        ),
        "ymd",
    ),
    DateOrder.MDY: (
        re.compile(rf"([0-9]{{1,2}})[/.-]([0-9]{{1,2}})[/.-]([0-9]{{4}}){_TIME}"),
        "mdy",
    ),
    DateOrder.DMY: (
        re.compile(rf"([0-9]{{1,2}})[/.-]([0-9]{{1,2}})[/.-]([0-9]{{4}}){_TIME}"),
        "dmy",
    ),
}
_MONTH = re.compile(r"(?:1[789]|2[01])[0-9]{2}[-/]?(?:0[1-9]|1[0-2])")
_YEARS = range(1700, 2101)

# A float written out without an exponent can have hundreds of decimals.
_NUMBER = re.compile(r"[+-]?(?:[0-9]{1,9}(?:\.[0-9]{0,340})?|\.[0-9]{1,340})")
_ABSENT = {"", "na", "n/a", "nan", "null", "none", "m", "-", "--"}
_ABSENT_NUMBERS = {-9999.0, -999.9, -999.0, -99.9}
_TRACE = {"t", "tr", "trace", "traza"}


def read_date(cell: str, order: DateOrder, *, line: int) -> dt.date:
    """Return the day written in ``cell``.

    Raises
    ------
    WeatherFileError
        MONTHLY for a year and month alone, BAD_DATE for anything else.
    """
    pattern, letters = _SPELLINGS[order]
    match = pattern.fullmatch(cell.strip())
    if match is None:
        monthly = _MONTH.fullmatch(cell.strip())
        reason = Trouble.MONTHLY if monthly else Trouble.BAD_DATE
        raise WeatherFileError(reason, line=line, found=cell)
    parts = dict(zip(letters, (int(p) for p in match.groups() if p), strict=True))
    try:
        day = dt.date(parts["y"], parts["m"], parts["d"])
    except ValueError:
        raise WeatherFileError(Trouble.BAD_DATE, line=line, found=cell) from None
    if day.year not in _YEARS:
        raise WeatherFileError(Trouble.BAD_DATE, line=line, found=cell)
    return day


def order_of(cells: list[str]) -> DateOrder | None:
    """Return the order of days that begin with the year; never a guess at the rest."""
    for order in (DateOrder.ISO, DateOrder.YMD):
        if cells and all(
            _SPELLINGS[order][0].fullmatch(cell.strip()) for cell in cells
        ):
            return order
    return None


def read_number(cell: str, *, comma: bool, line: int) -> float | None:
    """Return the number in ``cell``, None for any of the usual signs for missing."""
    bare = cell.strip()
    if bare.casefold() in _ABSENT:
        return None
    plain = bare.replace(",", ".") if comma else bare
    if not _NUMBER.fullmatch(plain):
        raise WeatherFileError(Trouble.BAD_NUMBER, line=line, found=cell)
    number = float(plain)
    return None if number in _ABSENT_NUMBERS else number


def is_trace(cell: str) -> bool:
    """Tell whether rain too little to measure is written."""
    return cell.strip().casefold() in _TRACE


def to_c(value: float, unit: TempUnit, *, line: int) -> float:
    """Return a temperature. [°C]"""
    if unit is TempUnit.F:
        return c_from_f(value)
    return _tenth(value, line) if unit is TempUnit.TENTH_C else value


def to_mm(value: float, unit: RainUnit, *, line: int) -> float:
    """Return a depth of rain. [mm]"""
    if unit is RainUnit.IN:
        return value * MM_PER_IN
    return _tenth(value, line) if unit is RainUnit.TENTH_MM else value


def _tenth(value: float, line: int) -> float:
    """Tenths are whole numbers; anything else was not written in tenths."""
    if value != int(value):
        raise WeatherFileError(Trouble.WRONG_UNITS, line=line, found=f"{value:g}")
    return value / 10
