"""One farm, one season: ledgers and weather in, the season page out."""

from __future__ import annotations

import datetime as dt

from reports.calc.assumptions import Assumptions
from reports.calc.nutrients import Climate
from reports.calc.season.credits import sources_of
from reports.calc.season.decays import Decays
from reports.calc.season.fields import field_season, tenants_of
from reports.calc.season.frosts import frosts_in
from reports.calc.season.lots import lots_of
from reports.calc.season.makeup import Makeups
from reports.calc.season.rates import RateTable
from reports.calc.season.reach import calendar_over, readings_in, recent
from reports.calc.season.reckoning import Reckoning
from reports.calc.season.soil_loss import erosion_indices
from reports.calc.season.station import StationTotals
from reports.calc.season.totals import totals_of
from reports.calc.shapes.basics import Span
from reports.calc.shapes.ledger import FieldLedger, Weather
from reports.calc.shapes.season import FieldSeason, SeasonPage


def summarize(
    fields: tuple[FieldLedger, ...],
    *,
    weather: Weather | None,
    season: Span,
    today: dt.date,
    assumptions: Assumptions,
    climate: Climate,
    southern: bool = False,
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
    southern : bool
        Whether the farm lies south of the equator: figures for a time of sowing are
        moved by half a year, and frosts of spring are sought from July on.

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
    reckoning = _reckoning(
        fields,
        weather=weather,
        season=season,
        today=today,
        assumptions=assumptions,
        climate=climate,
        southern=southern,
    )
    rows = _told(fields, reckoning)
    read = readings_in(weather, season, reckoning.counted)
    frost = frosts_in(weather, read.counted, southern=southern)
    return SeasonPage(
        season=season,
        counted_to=read.counted.last if reckoning.counted else None,
        station=weather.station if weather else "",
        weather_first=read.first,
        weather_last=read.last,
        missing_days=read.missing,
        days_without_weather=read.off_record,
        fields=rows,
        totals=totals_of(rows, season),
        lots=lots_of(rows, season),
        frost=frost,
        assumptions=assumptions.listed(),
        sources=sources_of(rows, frost),
    )


def _reckoning(
    fields: tuple[FieldLedger, ...],
    *,
    weather: Weather | None,
    season: Span,
    today: dt.date,
    assumptions: Assumptions,
    climate: Climate,
    southern: bool,
) -> Reckoning:
    plantings = (row for field in fields for row in recent(field.plantings, season))
    station = StationTotals(
        weather=weather,
        calendar=calendar_over(plantings, season, today),
        assumptions=assumptions,
    )
    return Reckoning(
        season=season,
        today=today,
        station=station,
        assumptions=dict(assumptions),
        climate=climate,
        makeups=Makeups(assumptions),
        decays=Decays(station),
        rates=RateTable(assumptions, southern=southern),
        southern=southern,
    )


def _told(
    fields: tuple[FieldLedger, ...], reckoning: Reckoning
) -> tuple[FieldSeason, ...]:
    tenants = [tenants_of(field, reckoning) for field in fields]
    # Every residue is kept here while its id stands for it.
    left = [row for tenancy in tenants for one in tenancy for row in one.left]
    erosion = erosion_indices(left)
    return tuple(
        field_season(field, row, erosion, reckoning)
        for field, row in zip(fields, tenants, strict=True)
    )
