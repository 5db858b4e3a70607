"""What kind a weather file is, and its days."""

from pathlib import PurePath

from records.reading.weather.by_station import is_by_station, read_by_station
from records.reading.weather.cells import read_date
from records.reading.weather.dly import is_dly, read_dly
from records.reading.weather.gather import Station
from records.reading.weather.general import archive_columns, read_table
from records.reading.weather.propose import propose_columns
from records.reading.weather.shapes import (
    Caution,
    Columns,
    DateOrder,
    Format,
    Guess,
    Heed,
    StationSeries,
    Trouble,
    WeatherFile,
    WeatherFileError,
)
from records.reading.weather.table import first_line, table_of
from records.reading.weather.unpack import text_of


def guess(data: bytes, name: str) -> Guess:
    """Return what a file looks like, and columns for a person to confirm.

    Parameters
    ----------
    data : bytes
        The file, plain or gzipped, at most 25 MB unzipped.
    name : str
        Its name; only its contents decide what it is.

    Raises
    ------
    WeatherFileError
        When the file cannot be any kind of daily weather.
    """
    text = text_of(data)
    first = first_line(text)
    if is_dly(first):
        return Guess(Format.DLY)
    if is_by_station(first):
        return Guess(Format.BY_STATION)
    table = table_of(text)
    if archive_columns(table) is not None:
        return Guess(Format.WIDE_ARCHIVE, table.header)
    proposals = propose_columns(table)
    if proposals is not None:
        _refuse_months(table.place(proposals.date), next(table.rows(), None))
    return Guess(Format.GENERAL, table.header, proposals)


def _refuse_months(place: int, first: tuple[int, list[str]] | None) -> None:
    """Monthly files look like daily ones but for their dates."""
    if first is None:
        raise WeatherFileError(Trouble.EMPTY)
    line, row = first
    try:
        read_date(row[place], DateOrder.ISO, line=line)
    except WeatherFileError as error:
        if error.reason is Trouble.MONTHLY:
            raise


def read(data: bytes, *, name: str, columns: Columns | None = None) -> WeatherFile:
    """Return the days of a file.

    Parameters
    ----------
    data : bytes
        The file, plain or gzipped, at most 25 MB unzipped.
    name : str
        Its name, which stands for the station where the file names none.
    columns : Columns, optional
        What a person confirmed. Without it only files that describe themselves are
        read; with it the file is read as a plain table whatever it looks like.

    Raises
    ------
    WeatherFileError
        With the reason, the line and what stood there.
    """
    if columns is not None:
        table = table_of(text_of(data))
        stations = read_table(table, columns, name=_stem(name), many=False)
        return _file(Format.GENERAL, stations)
    text = text_of(data)
    first = first_line(text)
    if is_dly(first):
        return _file(Format.DLY, read_dly(text))
    if is_by_station(first):
        return _file(Format.BY_STATION, read_by_station(text))
    table = table_of(text)
    found = archive_columns(table)
    if found is None:
        raise WeatherFileError(Trouble.COLUMNS_NEEDED)
    stations = read_table(table, found, name=_stem(name), many=True)
    return _file(Format.WIDE_ARCHIVE, stations)


def _stem(name: str) -> str:
    return PurePath(name).name.split(".")[0]


def _file(kind: Format, stations: list[Station]) -> WeatherFile:
    """Close every station; one without any reading is left out and named."""
    closed = [(station.station_id, station.close()) for station in stations]
    series: tuple[StationSeries, ...] = tuple(one for _, one in closed if one)
    if not series:
        raise WeatherFileError(Trouble.EMPTY)
    left_out = (name for name, one in closed if one is None)
    heeds = tuple(Heed(Caution.STATION_LEFT_OUT, 1, name) for name in left_out)
    return WeatherFile(kind, series, heeds)
