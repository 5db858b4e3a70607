"""Readings gathered day by day, checked, and closed into a series."""

import datetime as dt
from collections import Counter
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field

from records.reading.weather.shapes import (
    Caution,
    DayReading,
    Element,
    Heed,
    Missing,
    Range,
    Ranges,
    StationSeries,
    Trouble,
    WeatherFileError,
    gathered,
)

_PLAUSIBLE = {
    Element.TMIN: (-90.0, 60.0),
    Element.TMAX: (-90.0, 60.0),
    Element.RAIN: (0.0, 2000.0),
}
_FEW_DAYS = 365
_COLD_C = 15.0

Readings = dict[Element, float | None]


@dataclass
class Station:
    """One station while its file is being read."""

    station_id: str
    name: str | None = None
    latitude: float | None = None
    longitude: float | None = None
    elevation_m: float | None = None
    readings: dict[dt.date, Readings] = field(default_factory=dict)
    lines: dict[dt.date, int] = field(default_factory=dict)
    flags: Counter[str] = field(default_factory=Counter)
    presumed_dry: int = 0
    # What the columns are called in the file, for telling where a fault lies.
    headings: dict[Element, str] = field(default_factory=dict)

    def add(
        self, day: dt.date, element: Element, value: float | None, *, line: int
    ) -> None:
        """Keep one reading; a second one for the same day is refused."""
        readings = self.readings.setdefault(day, {})
        if element in readings:
            raise WeatherFileError(
                Trouble.DUPLICATE_DAY,
                line=line,
                found=day.isoformat(),
                column=self._heading(element),
            )
        if value is not None:
            low, high = _PLAUSIBLE[element]
            if not low <= value <= high:
                found = f"{day} {element} {value:g}"
                raise WeatherFileError(
                    Trouble.WRONG_UNITS,
                    line=line,
                    found=found,
                    column=self._heading(element),
                )
        readings[element] = value
        self.lines[day] = line

    def flagged(self, day: dt.date, element: Element, flag: str, *, line: int) -> None:
        """Drop and count a reading that failed a check of the archive."""
        self.add(day, element, None, line=line)
        self.flags[flag] += 1

    def close(self) -> StationSeries | None:
        """Return the series, or None when the station has no reading at all."""
        self._refuse_upside_down()
        days = tuple(self._days())
        if not days:
            return None
        gaps = tuple(_gaps(days))
        calendar = (days[-1].date - days[0].date).days + 1
        ranges = Ranges(
            _range(day.tmin_c for day in days),
            _range(day.tmax_c for day in days),
            _range(day.rain_mm for day in days),
        )
        return StationSeries(
            station_id=self.station_id,
            name=self.name,
            latitude=self.latitude,
            longitude=self.longitude,
            elevation_m=self.elevation_m,
            days=days,
            dropped=self.flags.total(),
            dropped_by_flag=tuple(sorted(self.flags.items())),
            gaps=gaps,
            missing=Missing(
                calendar - sum(day.tmin_c is not None for day in days),
                calendar - sum(day.tmax_c is not None for day in days),
                calendar - sum(day.rain_mm is not None for day in days),
            ),
            ranges=ranges,
            warnings=tuple(self._heeds(len(days), gaps, ranges)),
        )

    def _heading(self, element: Element) -> str:
        return self.headings.get(element, element.value)

    def _refuse_upside_down(self) -> None:
        """Every day whose lowest is above its highest, in one refusal."""
        faults = [
            WeatherFileError(
                Trouble.TMIN_ABOVE_TMAX,
                line=self.lines[day],
                found=f"{day}: {low:.4g} > {high:.4g} °C",
                column=self._heading(Element.TMIN),
            )
            for day, readings in sorted(self.readings.items())
            if (low := readings.get(Element.TMIN)) is not None
            and (high := readings.get(Element.TMAX)) is not None
            and low > high
        ]
        if faults:
            raise gathered(faults)

    def _days(self) -> Iterator[DayReading]:
        for day, readings in sorted(self.readings.items()):
            tmin_c = readings.get(Element.TMIN)
            tmax_c = readings.get(Element.TMAX)
            rain_mm = readings.get(Element.RAIN)
            if (tmin_c, tmax_c, rain_mm) != (None, None, None):
                yield DayReading(day, tmin_c, tmax_c, rain_mm)

    def _heeds(
        self, days: int, gaps: tuple[tuple[dt.date, dt.date], ...], ranges: Ranges
    ) -> Iterator[Heed]:
        if self.flags:
            yield Heed(Caution.VALUES_DROPPED, self.flags.total())
        if self.presumed_dry:
            yield Heed(Caution.PRESUMED_DRY, self.presumed_dry)
        if gaps:
            absent = sum((last - first).days + 1 for first, last in gaps)
            yield Heed(Caution.GAPS, absent)
        if days < _FEW_DAYS:
            yield Heed(Caution.FEW_DAYS, days)
        if days >= _FEW_DAYS and ranges.tmax_c and ranges.tmax_c.high < _COLD_C:
            yield Heed(Caution.LOOKS_COLD, days, f"{ranges.tmax_c.high:g}")


def _gaps(days: tuple[DayReading, ...]) -> Iterator[tuple[dt.date, dt.date]]:
    one = dt.timedelta(days=1)
    for before, after in zip(days, days[1:], strict=False):
        if after.date - before.date > one:
            yield before.date + one, after.date - one


def _range(values: Iterable[float | None]) -> Range | None:
    known = [value for value in values if value is not None]
    return Range(min(known), max(known)) if known else None
