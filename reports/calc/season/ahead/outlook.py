"""What lies ahead of every stand of a farm, on a day."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator, Mapping, Sequence

import numpy as np
from numpy.typing import NDArray

from reports.calc import forecast
from reports.calc.season.ahead.growing import Growing
from reports.calc.season.ahead.kills import Killed, kill_odds, kills_of
from reports.calc.season.ahead.left_out import gap_years, spoilt_years
from reports.calc.season.ahead.opening import Opening
from reports.calc.season.ahead.opens import windows_of
from reports.calc.season.ahead.sky import Sky
from reports.calc.season.ahead.stages import Stood, stages_of
from reports.calc.season.makeup import Makeups
from reports.calc.shapes.ahead import (
    Caveat,
    KillOdds,
    Outlook,
    SpreadOf,
    Window,
    WindowKind,
)
from reports.calc.shapes.ledger import PlantingFacts, Weather
from reports.calc.shapes.season import StageName

ENDS = (WindowKind.CUT, WindowKind.END_MOWING, WindowKind.END_WORKING_IN)


def growing_under(
    weather: Weather | None,
    *,
    today: dt.date,
    assumptions: Mapping[str, float],
    whole_fahrenheit: bool = True,
    southern: bool = False,
) -> Growing:
    """Return timetables under a station's years as they stand on a day."""
    sky = Sky(weather, today=today, whole_fahrenheit=whole_fahrenheit)
    return Growing(sky, assumptions, southern)


def outlooks(
    plantings: Sequence[PlantingFacts], growing: Growing
) -> tuple[Outlook, ...]:
    """Return what lies ahead of every planting with a start and a kind.

    Parameters
    ----------
    plantings : sequence of PlantingFacts
        Sown or planned; those without a date or a kind are left out.
    growing : Growing
        From :func:`growing_under`.

    Returns
    -------
    tuple of Outlook
        One a planting, in the same order.

    Notes
    -----
    The weather read since sowing counts as it was; from there each year on record
    stands in once, so that the spread is what the farm's own years would have done
    ([CALC]_). What was seen takes the place of what is reckoned. Stages that go by
    days come on the same day in every year; their range is that of the figures.
    """
    stands = stages_of(plantings, growing)
    killed = kills_of(stands, growing)
    makeups = Makeups(growing.assumptions)
    gaps, years, out = gap_years(growing.sky), _years(growing), []
    for stand, kill in zip(stands, killed, strict=True):
        odds = None if kill is None else kill_odds(stand, kill)
        found = windows_of(Opening(stand, odds, growing.assumptions, makeups))
        spoilt = _spoilt(stand, kill, growing, gaps)
        caveats = dict.fromkeys(_caveats(stand, odds, found, growing))
        if spoilt:
            caveats[Caveat.YEARS_LEFT_OUT] = None
        out.append(
            Outlook(
                planting_id=stand.planting.id,
                stages=stand.rows,
                kill=odds,
                windows=found,
                caveats=tuple(caveats),
                years=years,
                spoilt_years=spoilt,
            )
        )
    return tuple(out)


def _years(growing: Growing) -> tuple[int, ...]:
    return tuple(growing.sky.aligned([growing.sky.today]).years.tolist())


def _spoilt(
    stand: Stood, kill: Killed | None, growing: Growing, gaps: NDArray[np.bool_]
) -> tuple[int, ...]:
    """Return the years that gaps leave out of its canopy's or its frost's day."""
    told = [stand.years(StageName.CLOSED)]
    if kill is not None and kill.read_on is None:
        told.append(kill.days)
    found = {year for days in told for year in spoilt_years(growing.sky, gaps, days)}
    return tuple(sorted(found))


def _caveats(
    stand: Stood,
    odds: KillOdds | None,
    found: tuple[Window, ...],
    growing: Growing,
) -> Iterator[Caveat]:
    yield from station_caveats(growing)
    if all(row.spread is not SpreadOf.YEARS for row in stand.rows):
        yield Caveat.BY_DAYS
    if stand.row(StageName.FIRST_FLOWER).on is None:
        yield Caveat.BLOOM_UNKNOWN
    if stand.row(StageName.VIABLE_SEED).on is None:
        yield Caveat.SEED_UNKNOWN
    if odds is not None and odds.chance == 0:
        yield Caveat.NO_FROST_ON_RECORD
    closes = [row.closes for row in found if row.kind in ENDS and row.closes]
    if closes and max(closes) < growing.sky.today:
        yield Caveat.PAST_EVERY_WINDOW


def station_caveats(growing: Growing) -> Iterator[Caveat]:
    """Yield what the record of the station cannot say."""
    full = full_years(growing.sky)
    if growing.sky.weather is None:
        yield Caveat.NO_WEATHER
    elif full < forecast.YEARS_LEAST:
        yield Caveat.TOO_FEW_YEARS
    elif full < forecast.YEARS_FEW:
        yield Caveat.FEW_YEARS
    if growing.southern:
        yield Caveat.SOUTHERN_FIGURES


def full_years(sky: Sky) -> int:
    """Return about how many whole years were read."""
    return round(sky.days / 365.25)
