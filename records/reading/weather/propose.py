"""Columns and units proposed for a table, where they can be told safely."""

import re
import unicodedata
from collections.abc import Iterable
from itertools import islice

from records.reading.weather.cells import order_of
from records.reading.weather.shapes import Columns, RainUnit, TempUnit
from records.reading.weather.table import Table

_SAMPLE = 20_000
_ENOUGH_ROWS = 300
_HOTTEST_C = 55.0
_HOTTEST_F = 135.0
_WETTEST_IN = 50.0

_NAMES = {
    "date": "date day datetime obs_date observation_date fecha dia",
    "tmin": "tmin t_min temp_min min_temp mintemp tempmin min minimum low temp_low "
    "low_temp temperature_min min_temperature minimum_temperature temperature_2m_min "
    "minima temperatura_minima",
    "tmax": "tmax t_max temp_max max_temp maxtemp tempmax max maximum high temp_high "
    "high_temp temperature_max max_temperature maximum_temperature temperature_2m_max "
    "maxima temperatura_maxima",
    "rain": "rain prcp precip precipitation rainfall ppt rain_sum precipitation_sum "
    "lluvia precipitacion",
}
_ROLES = {role: frozenset(names.split()) for role, names in _NAMES.items()}
_TEMP_ENDS = {
    "c": TempUnit.C,
    "degc": TempUnit.C,
    "celsius": TempUnit.C,
    "f": TempUnit.F,
    "degf": TempUnit.F,
    "fahrenheit": TempUnit.F,
}
_RAIN_ENDS = {
    "mm": RainUnit.MM,
    "in": RainUnit.IN,
    "inch": RainUnit.IN,
    "inches": RainUnit.IN,
}
_FILLERS = {"deg", "degree", "degrees"}


def propose_columns(table: Table) -> Columns | None:
    """Return what can be told of a table; None when no column of days is found.

    A unit comes from the header, or from readings that leave one unit only. The order
    of days that do not begin with the year is never proposed.
    """
    places = {role: _place(table, role) for role in _ROLES}
    date = places["date"]
    if date is None:
        return None
    rows = [row for _, row in islice(table.rows(), _SAMPLE)]
    temps = [place for role in ("tmin", "tmax") if (place := places[role]) is not None]
    rain = places["rain"]

    def name(place: int | None) -> str | None:
        return None if place is None else table.header[place]

    return Columns(
        date=table.header[date],
        tmin=name(places["tmin"]),
        tmax=name(places["tmax"]),
        rain=name(rain),
        temp_unit=_temp_unit(table, temps, rows),
        rain_unit=None if rain is None else _rain_unit(table, rain, rows),
        date_order=order_of([row[date] for row in rows]),
    )


def _words(header: str) -> list[str]:
    """Return the words of a header, without accents and signs."""
    plain = unicodedata.normalize("NFKD", header.replace("º", "").casefold())
    bare = "".join(c for c in plain if not unicodedata.combining(c))
    return [word for word in re.split(r"[^a-z0-9]+", bare) if word]


def _parted(header: str) -> tuple[str, str]:
    """Part "Tmin (deg C)" into what is measured and its unit."""
    words = [word for word in _words(header) if word not in _FILLERS]
    if len(words) > 1 and words[-1] in {**_TEMP_ENDS, **_RAIN_ENDS}:
        return "_".join(words[:-1]), words[-1]
    return "_".join(words), ""


def _place(table: Table, role: str) -> int | None:
    """Return the only column that can hold ``role``."""
    found = [
        i for i, name in enumerate(table.header) if _parted(name)[0] in _ROLES[role]
    ]
    return found[0] if len(found) == 1 else None


def _temp_unit(
    table: Table, places: list[int], rows: list[list[str]]
) -> TempUnit | None:
    if not places:
        return None
    said = {_TEMP_ENDS.get(_parted(table.header[place])[1]) for place in places}
    if said != {None}:
        return said.pop() if len(said) == 1 else None
    numbers = list(_numbers(rows, places, comma=table.comma))
    if len(rows) < _ENOUGH_ROWS or not numbers:
        return None
    hottest = max(numbers)
    if hottest <= _HOTTEST_C:
        return TempUnit.C
    return TempUnit.F if hottest <= _HOTTEST_F else _tenths(numbers, TempUnit.TENTH_C)


def _rain_unit(table: Table, place: int, rows: list[list[str]]) -> RainUnit | None:
    said = _RAIN_ENDS.get(_parted(table.header[place])[1])
    if said is not None:
        return said
    numbers = list(_numbers(rows, [place], comma=table.comma))
    # Inches never reach so far in a day, and tenths have no decimals.
    wet = bool(numbers) and max(numbers) > _WETTEST_IN
    return RainUnit.MM if wet and not _whole(numbers) else None


def _tenths(numbers: list[float], unit: TempUnit) -> TempUnit | None:
    return unit if _whole(numbers) else None


def _whole(numbers: list[float]) -> bool:
    return all(number == int(number) for number in numbers)


def _numbers(
    rows: list[list[str]], places: list[int], *, comma: bool
) -> Iterable[float]:
    """Yield what reads as a number; the rest is met again when the file is read."""
    for row in rows:
        for place in places:
            cell = row[place].strip().replace(",", "." if comma else ",")
            if re.fullmatch(r"-?[0-9]{1,6}(\.[0-9]{1,340})?", cell):
                yield float(cell)
