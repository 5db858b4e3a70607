"""Tables whose columns and units a person has told."""

import datetime as dt
from dataclasses import dataclass

from records.reading.weather.cells import is_trace, read_date, read_number, to_c, to_mm
from records.reading.weather.gather import Station
from records.reading.weather.shapes import (
    MOST_FAULTS,
    Columns,
    DateOrder,
    Element,
    RainUnit,
    TempUnit,
    Trouble,
    WeatherFileError,
    gathered,
)
from records.reading.weather.table import Table

STATION_NAMES = ("station", "station_id", "station id")
ARCHIVE = {"tmin": "TMIN", "tmax": "TMAX", "rain": "PRCP"}


@dataclass(frozen=True, slots=True)
class _Column:
    """One element, where it stands, and where its marks stand if it has any."""

    element: Element
    place: int
    marks: int | None
    unit: TempUnit | RainUnit


def archive_columns(table: Table) -> Columns | None:
    """Return the columns if the table is NOAA's wide archive, in tenths with marks.

    The same columns in whole units come from the archive's order form; a value with a
    decimal point gives those away.
    """
    if table.find("station") is None or table.find("date") is None:
        return None
    places = {
        role: table.find(code.casefold())
        for role, code in ARCHIVE.items()
        if table.find(f"{code}_attributes".casefold()) is not None
    }
    found = {role: place for role, place in places.items() if place is not None}
    cells = (row[place] for _, row in table.rows() for place in found.values())
    if not found or any("." in cell for cell in cells):
        return None
    date = table.find("date")
    return Columns(
        date=table.header[date or 0],
        **{role: table.header[place] for role, place in found.items()},
        temp_unit=TempUnit.TENTH_C,
        rain_unit=RainUnit.TENTH_MM,
        date_order=DateOrder.ISO,
    )


def read_table(
    table: Table, columns: Columns, *, name: str, many: bool
) -> list[Station]:
    """Return the stations of the table; more than one only if ``many``.

    Raises
    ------
    WeatherFileError
        COLUMNS_NEEDED when something is left untold, and for every fault of a cell.
    """
    if not columns.told or columns.date_order is None:
        raise WeatherFileError(Trouble.COLUMNS_NEEDED)
    date = table.place(columns.date)
    told = _columns(table, columns)
    whose = table.find(*STATION_NAMES)
    stations: dict[str, Station] = {}
    faults: list[WeatherFileError] = []
    for line, row in table.rows():
        key = row[whose].strip() if whose is not None else name
        if key not in stations:
            if stations and not many:
                raise WeatherFileError(Trouble.MIXED_STATIONS, line=line, found=key)
            stations[key] = _station(table, row, key)
            stations[key].headings = {
                one.element: table.header[one.place] for one in told
            }
        try:
            day = read_date(row[date], columns.date_order, line=line)
        except WeatherFileError as error:
            faults.append(_in(error, columns.date))
            continue
        for column in told:
            try:
                _take(stations[key], day, column, row, comma=table.comma, line=line)
            except WeatherFileError as error:
                faults.append(_in(error, table.header[column.place]))
        if len(faults) >= MOST_FAULTS:
            break
    if faults:
        raise gathered(faults)
    return list(stations.values())


def _in(error: WeatherFileError, heading: str) -> WeatherFileError:
    error.column = heading
    return error


def _columns(table: Table, columns: Columns) -> list[_Column]:
    roles = (
        (Element.TMIN, columns.tmin, columns.temp_unit),
        (Element.TMAX, columns.tmax, columns.temp_unit),
        (Element.RAIN, columns.rain, columns.rain_unit),
    )
    return [
        _Column(
            element,
            table.place(name),
            table.find(f"{name}_attributes".casefold()),
            unit,
        )
        for element, name, unit in roles
        if name is not None and unit is not None
    ]


def _take(
    station: Station,
    day: dt.date,
    column: _Column,
    row: list[str],
    *,
    comma: bool,
    line: int,
) -> None:
    """Keep one cell, unless missing or flagged by the archive's checks."""
    cell = row[column.place]
    if column.element is Element.RAIN and is_trace(cell):
        station.add(day, column.element, 0.0, line=line)
        return
    number = read_number(cell, comma=comma, line=line)
    if number is None:
        station.add(day, column.element, None, line=line)
        return
    marks = row[column.marks].split(",") if column.marks is not None else []
    mark, flag = (marks[i].strip() if len(marks) > i else "" for i in (0, 1))
    if flag:
        station.flagged(day, column.element, flag, line=line)
        return
    station.presumed_dry += mark == "P"
    station.add(day, column.element, _converted(number, column.unit, line), line=line)


def _converted(number: float, unit: TempUnit | RainUnit, line: int) -> float:
    if isinstance(unit, TempUnit):
        return to_c(number, unit, line=line)
    return to_mm(number, unit, line=line)


def _station(table: Table, row: list[str], key: str) -> Station:
    """Return the station as the first of its rows describes it."""
    called = table.find("name", "station_name")
    return Station(
        key,
        name=(row[called].strip() or None) if called is not None else None,
        latitude=_measure(table, row, "latitude", "lat"),
        longitude=_measure(table, row, "longitude", "lon"),
        elevation_m=_measure(table, row, "elevation", "elev"),
    )


def _measure(table: Table, row: list[str], *names: str) -> float | None:
    place = table.find(*names)
    try:
        return (
            None
            if place is None
            else read_number(row[place], comma=table.comma, line=1)
        )
    except WeatherFileError:
        return None
