"""How far a season reaches: into older plantings, and into the weather record."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

import numpy as np

from reports.calc.season.decays import HORIZON_DAYS
from reports.calc.shapes.basics import Span
from reports.calc.shapes.ledger import PlantingFacts, Weather

MARGIN = dt.timedelta(days=HORIZON_DAYS)


def recent(
    plantings: Sequence[PlantingFacts], season: Span
) -> tuple[PlantingFacts, ...]:
    """Return the plantings whose stand or residue may reach into a season."""
    since = season.first - MARGIN
    return tuple(row for row in plantings if not _gone_before(row, since))


def _gone_before(planting: PlantingFacts, since: dt.date) -> bool:
    ends = [end for end in planting.ends if not end.regrows]
    ended_m2 = sum(end.area_m2 for end in ends)
    return ended_m2 >= planting.area_m2 and all(end.on < since for end in ends)


def calendar_over(
    plantings: Iterable[PlantingFacts], season: Span, today: dt.date
) -> Span:
    """Return the days a reckoning may have to look up, residues followed out."""
    days = [day for row in plantings for day in _days(row)]
    first = min((season.first, *days))
    return Span(first, max((season.last, today, *days)) + 2 * MARGIN)


def _days(planting: PlantingFacts) -> Iterator[dt.date]:
    if planting.start is not None:
        yield planting.start
    for seen in planting.observations:
        yield seen.on
    for end in planting.ends:
        yield end.on
        if end.worked_in_on is not None:
            yield end.worked_in_on


@dataclass(frozen=True, slots=True)
class Readings:
    """What the station read: its record, and the gaps in the counted days. [d]"""

    counted: Span
    first: dt.date | None
    last: dt.date | None
    missing: int
    off_record: int


def readings_in(weather: Weather | None, season: Span, counted: int) -> Readings:
    """Return how far the record covers the season's first ``counted`` days."""
    days = Span(season.first, season.first + dt.timedelta(days=counted - 1))
    if weather is None or not len(weather):
        return Readings(days, None, None, 0, counted)
    start = max(weather.index(days.first), 0)
    stop = max(min(weather.index(days.last) + 1, len(weather)), start)
    read = (weather.tmin_c, weather.tmax_c, weather.rain_mm)
    missing = np.isnan(np.stack([row[start:stop] for row in read])).any(axis=0)
    last = weather.day(len(weather) - 1)
    off_record = counted - (stop - start)
    return Readings(days, weather.first, last, int(missing.sum()), off_record)
