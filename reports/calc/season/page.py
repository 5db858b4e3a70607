"""One farm, one season: ledgers and weather in, the season page out."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterable, Iterator

import numpy as np

from reports.calc.assumptions import Assumptions
from reports.calc.nutrients import Climate
from reports.calc.season.credits import sources_of
from reports.calc.season.decays import HORIZON_DAYS, Decays
from reports.calc.season.fields import field_season, recent, tenants_of
from reports.calc.season.frosts import frosts_in
from reports.calc.season.makeup import Makeups
from reports.calc.season.rates import RateTable
from reports.calc.season.reckoning import Reckoning
from reports.calc.season.soil_loss import erosion_indices
from reports.calc.season.station import StationTotals
from reports.calc.season.totals import lots_of, totals_of
from reports.calc.shapes.basics import Span
from reports.calc.shapes.ledger import FieldLedger, PlantingFacts, Weather
from reports.calc.shapes.season import SeasonPage

MARGIN = dt.timedelta(days=HORIZON_DAYS)


def summarize(
    fields: tuple[FieldLedger, ...],
    *,
    weather: Weather | None,
    season: Span,
    today: dt.date,
    assumptions: Assumptions,
    climate: Climate,
) -> SeasonPage:
    """Return what one season on one farm came to.

    Parameters
    ----------
    fields : tuple of FieldLedger
        Every field with its plantings, those of earlier seasons too: their residue
        and their stands reach into this one. Areas above 0. [m²]
    weather : Weather or None
        The station's record, the longer the better: days it lacks take the mean of
        the same day in its other years. None makes every stage go by days and every
        residue by the calendar's half-lives.
    season : Span
        First and last day told.
    today : datetime.date
        Days up to today are counted, later ones are ``not_yet``.
    assumptions : Assumptions
        Our choices with the farm's own laid over them.
    climate : Climate
        Whether residue on top lies warm and humid or cool; bears on nitrogen alone.

    Returns
    -------
    SeasonPage
        Numbers, dates, ranges, enums and the keys of the sources used.

    Raises
    ------
    ValueError
        If the season ends before it begins.

    Notes
    -----
    A stand lives from the day it is up to the day before it ended. Each part of a
    field carries one thing a day: living cover before cash crop before residue of
    30 % cover or more before bare ground, so that days add up to the season
    ([BUCHI16]_, [UNL-G20]_). A planting that lies in two seasons is told in both, its
    seed is counted in the season it was sown. Cost grows with days and plantings,
    not with their product: the station is summed once ([CALC]_).
    """
    if season.last < season.first:
        raise ValueError("the season ends before it begins")
    told = [recent(field.plantings, season) for field in fields]
    station = StationTotals(
        weather=weather,
        calendar=_calendar(told, season, today),
        assumptions=assumptions,
    )
    reckoning = Reckoning(
        season=season,
        today=today,
        station=station,
        assumptions=dict(assumptions),
        climate=climate,
        makeups=Makeups(assumptions),
        decays=Decays(station),
        rates=RateTable(assumptions),
    )
    tenants = [tenants_of(plantings, reckoning) for plantings in told]
    erosion = erosion_indices(
        left for row in tenants for one in row for left in one.left
    )
    rows = tuple(
        field_season(field, row, erosion, reckoning)
        for field, row in zip(fields, tenants, strict=True)
    )
    counted = season.first + dt.timedelta(days=reckoning.counted - 1)
    frost = frosts_in(weather, Span(season.first, counted))
    missing, without = _unread(weather, season, reckoning.counted)
    return SeasonPage(
        season=season,
        counted_to=counted if reckoning.counted else None,
        station=weather.station if weather else "",
        weather_first=weather.first if weather and len(weather) else None,
        weather_last=weather.day(len(weather) - 1)
        if weather and len(weather)
        else None,
        missing_days=missing,
        days_without_weather=without,
        fields=rows,
        totals=totals_of(rows, season),
        lots=lots_of(rows, season),
        frost=frost,
        assumptions=assumptions.listed(),
        sources=sources_of(rows, frost),
    )


def _calendar(
    told: Iterable[Iterable[PlantingFacts]], season: Span, today: dt.date
) -> Span:
    days = [day for plantings in told for row in plantings for day in _days(row)]
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


def _unread(weather: Weather | None, season: Span, counted: int) -> tuple[int, int]:
    """Return counted days with a reading missing, and those off the record."""
    if weather is None:
        return 0, counted
    start = weather.index(season.first)
    first, stop = max(start, 0), min(start + counted, len(weather))
    if stop <= first:
        return 0, counted
    span = slice(first, stop)
    missing = (
        np.isnan(weather.tmin_c[span])
        | np.isnan(weather.tmax_c[span])
        | np.isnan(weather.rain_mm[span])
    )
    return int(missing.sum()), counted - (stop - first)
