"""What a weather file says, and what can be wrong with one."""

from __future__ import annotations

import datetime as dt
from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum


class Format(StrEnum):
    """The kinds of file that can be read."""

    DLY = "dly"
    BY_STATION = "by_station"
    WIDE_ARCHIVE = "wide_archive"
    GENERAL = "general"


class Element(StrEnum):
    """The three readings kept, under NOAA's own codes."""

    TMIN = "TMIN"
    TMAX = "TMAX"
    RAIN = "PRCP"


class TempUnit(StrEnum):
    C = "C"
    F = "F"
    TENTH_C = "C/10"


class RainUnit(StrEnum):
    MM = "mm"
    IN = "in"
    TENTH_MM = "mm/10"


class DateOrder(StrEnum):
    ISO = "iso"
    YMD = "ymd"
    MDY = "mdy"
    DMY = "dmy"


class Trouble(StrEnum):
    """Why a file could not be read."""

    EMPTY = "empty"
    BINARY = "binary"
    NOT_UTF8 = "not_utf8"
    TOO_LARGE = "too_large"
    TRUNCATED = "truncated"
    RAGGED = "ragged"
    MONTHLY = "monthly"
    NO_COLUMNS = "no_columns"
    COLUMNS_NEEDED = "columns_needed"
    BAD_DATE = "bad_date"
    BAD_NUMBER = "bad_number"
    WRONG_UNITS = "wrong_units"
    DUPLICATE_DAY = "duplicate_day"
    TMIN_ABOVE_TMAX = "tmin_above_tmax"
    MIXED_STATIONS = "mixed_stations"


class Caution(StrEnum):
    """What the reader of a file that could be read should still know."""

    VALUES_DROPPED = "values_dropped"
    PRESUMED_DRY = "presumed_dry"
    GAPS = "gaps"
    FEW_DAYS = "few_days"
    LOOKS_COLD = "looks_cold"
    STATION_LEFT_OUT = "station_left_out"


class WeatherFileError(ValueError):
    """A file that could not be read: why, on which line, and what stood there.

    ``column`` is the heading of the cell at fault, where one cell is. ``others`` are
    the next faults of the same file, told at once so that they are mended at once.
    """

    def __init__(
        self,
        reason: Trouble,
        *,
        line: int | None = None,
        found: str = "",
        column: str = "",
    ) -> None:
        self.reason = reason
        self.line = line
        self.column = column
        self.others: tuple[WeatherFileError, ...] = ()
        self.found = found[:80]
        where = f" on line {line}" if line else ""
        what = f": {self.found}" if found else ""
        super().__init__(f"{reason.value.replace('_', ' ')}{where}{what}")


MOST_FAULTS = 50


def gathered(faults: Sequence[WeatherFileError]) -> WeatherFileError:
    """The first of several faults, with the others in it."""
    faults[0].others = tuple(faults[1:MOST_FAULTS])
    return faults[0]


@dataclass(frozen=True)
class Columns:
    """Which column holds what, and how it is written; None is not told, or not there.

    Plain words ("C", "mm", "iso") are taken as well as members, and "" as None.
    """

    date: str
    tmin: str | None = None
    tmax: str | None = None
    rain: str | None = None
    temp_unit: TempUnit | None = None
    rain_unit: RainUnit | None = None
    date_order: DateOrder | None = None

    def __post_init__(self) -> None:
        for name in ("tmin", "tmax", "rain"):
            object.__setattr__(self, name, getattr(self, name) or None)
        units = {"temp_unit": TempUnit, "rain_unit": RainUnit, "date_order": DateOrder}
        for name, members in units.items():
            told = getattr(self, name) or None
            object.__setattr__(self, name, told and members(told))

    @property
    def told(self) -> bool:
        """Whether nothing that reading needs is left open."""
        temps = self.tmin or self.tmax
        return bool(
            self.date
            and self.date_order
            and (temps or self.rain)
            and (self.temp_unit or not temps)
            and (self.rain_unit or not self.rain)
        )


@dataclass(frozen=True, slots=True)
class Guess:
    """What a file looks like; ``proposals`` leaves open what cannot be told safely."""

    format: Format
    columns: tuple[str, ...] = ()
    proposals: Columns | None = None


@dataclass(frozen=True, slots=True)
class DayReading:
    """One day with at least one reading; None is missing, which is never zero."""

    date: dt.date
    tmin_c: float | None
    tmax_c: float | None
    rain_mm: float | None


@dataclass(frozen=True, slots=True)
class Missing:
    """Days without a reading, between the first and the last day of the series."""

    tmin: int
    tmax: int
    rain: int


@dataclass(frozen=True, slots=True)
class Range:
    """The least and greatest reading, as converted."""

    low: float
    high: float


@dataclass(frozen=True, slots=True)
class Ranges:
    """For a look before saving: temperatures [°C] and rain [mm]."""

    tmin_c: Range | None
    tmax_c: Range | None
    rain_mm: Range | None


@dataclass(frozen=True, slots=True)
class Heed:
    """One caution and how many readings or days it concerns."""

    kind: Caution
    count: int
    detail: str = ""


@dataclass(frozen=True, slots=True)
class StationSeries:
    """The days of one station, in order.

    ``dropped`` counts readings the archive itself marks as failing its checks, by
    mark in ``dropped_by_flag``. A gap is a run of days without any reading.
    """

    station_id: str
    name: str | None
    latitude: float | None
    longitude: float | None
    elevation_m: float | None
    days: tuple[DayReading, ...]
    dropped: int
    dropped_by_flag: tuple[tuple[str, int], ...]
    gaps: tuple[tuple[dt.date, dt.date], ...]
    missing: Missing
    ranges: Ranges
    warnings: tuple[Heed, ...]

    @property
    def first(self) -> dt.date:
        return self.days[0].date

    @property
    def last(self) -> dt.date:
        return self.days[-1].date


@dataclass(frozen=True, slots=True)
class WeatherFile:
    """Everything read from one file; at least one station with at least one day."""

    format: Format
    stations: tuple[StationSeries, ...]
    warnings: tuple[Heed, ...] = ()
