"""A stand ended on a day, now or later: both ways to leave it, over the years."""

from __future__ import annotations

import datetime as dt
from collections.abc import Sequence
from dataclasses import replace

import numpy as np
from numpy.typing import NDArray

from reports.calc import forecast
from reports.calc.assumptions import Assumptions
from reports.calc.nutrients import Climate
from reports.calc.season.ahead.advice import advice_of
from reports.calc.season.decays import HORIZON_DAYS, LIKELY, OFFSETS, PLACES, Decays
from reports.calc.season.holds import Three, lasting
from reports.calc.season.makeup import Makeups
from reports.calc.season.page import summarize
from reports.calc.season.ripeness import ripeness
from reports.calc.season.station import StationTotals
from reports.calc.shapes.basics import Between, Span
from reports.calc.shapes.choice import ResidueChoice
from reports.calc.shapes.ledger import (
    End,
    Ending,
    FieldLedger,
    PlantingFacts,
    Residue,
    Weather,
)
from reports.calc.shapes.season import PlantingSeason
from reports.calc.shapes.wishes import EndChoice, YearsPoint

Days = NDArray[np.float64]


def end_choice(
    field: FieldLedger,
    planting: PlantingFacts,
    *,
    on: dt.date,
    weather: Weather | None,
    today: dt.date,
    assumptions: Assumptions,
    climate: Climate,
    southern: bool = False,
) -> EndChoice | None:
    """Return both ways to leave what still stands of a planting if it ends on a day.

    Parameters
    ----------
    field, planting
        Where it stands and what is known of it; it must be sown.
    on : datetime.date
        Day of the end, today or later.
    weather : Weather or None
        What was read; later days take the mean, and each year in turn for the spread.
    today : datetime.date
        Weather after it is not looked at.
    assumptions, climate, southern
        As for a season.

    Returns
    -------
    EndChoice or None
        None where nothing of it would stand on that day.
    """
    row = _ended(planting, on)
    if row is None:
        return None
    page = summarize(
        (replace(field, plantings=(row,), parts_m2=0.0),),
        weather=weather,
        season=Span(on - dt.timedelta(1), on + dt.timedelta(HORIZON_DAYS)),
        today=max(on, today),
        assumptions=assumptions,
        climate=climate,
        southern=southern,
    )
    found = [season for one in page.fields for season in one.plantings]
    if not found or not found[0].choices:
        return None
    choice = _untaken(found[0].choices[-1])
    points, years = _over_years(found[0], choice, weather, assumptions)
    set_out = bool(planting.next_crop_transplanted)
    advice = tuple(advice_of(choice, transplants=set_out))
    return EndChoice(choice, advice, points, years)


def _untaken(choice: ResidueChoice) -> ResidueChoice:
    """Return the comparison with neither way marked: nothing is chosen yet."""
    if choice.on_top is None or choice.worked_in is None:
        return choice
    return replace(
        choice,
        on_top=replace(choice.on_top, taken=False),
        worked_in=replace(choice.worked_in, taken=False),
    )


def _ended(planting: PlantingFacts, on: dt.date) -> PlantingFacts | None:
    """Return the planting with all that still stands ended on a day."""
    kept = tuple(end for end in planting.ends if end.regrows or end.on < on)
    over = sum(end.area_m2 for end in kept if not end.regrows)
    left = planting.area_m2 - over
    start = planting.start
    if start is None or start >= on or left <= planting.area_m2 * 0.005:
        return None
    end = End(0, on, left, Ending.MOWN, Residue.ON_TOP)
    sown = planting.sown_on or planting.planned_on
    return replace(planting, ends=(*kept, end), sown_on=sown)


def _over_years(
    row: PlantingSeason,
    choice: ResidueChoice,
    weather: Weather | None,
    assumptions: Assumptions,
) -> tuple[tuple[YearsPoint, ...], int]:
    """Return the spread of what is left over the years, and how many there are."""
    mass = choice.mass_likely_kg_m2
    if weather is None or mass is None or choice.on_top is None:
        return (), 0
    last = weather.day(len(weather) - 1)
    calendar = Span(weather.first, last)
    station = StationTotals(weather=weather, calendar=calendar, assumptions=assumptions)
    ripe = ripeness(row.stages, choice.ended_on, None)
    makeup = Makeups(assumptions).of(row.planting, ripe).makeup
    there = forecast.align(
        first_day=weather.first, days=len(weather), on=[choice.ended_on]
    )
    far = there.at[0] + OFFSETS[-1] < len(weather)
    starts = there.at[0][far & (there.at[0] >= 0) & ~there.own[0]]
    if makeup is None or len(starts) < forecast.YEARS_LEAST:
        return (), 0
    decays = Decays(station)
    runs = [decays.of(makeup, int(start)) for start in starts]
    offsets = np.array(OFFSETS)
    left = np.stack([run.left[offsets] for run in runs], axis=-1)
    layer = np.stack([run.layer[offsets] for run in runs], axis=-1)
    top = forecast.days_by_chance(left[:, LIKELY] * mass)
    worked = forecast.days_by_chance(left[:, PLACES + LIKELY] * mass)
    cover = forecast.days_by_chance(-np.expm1(-layer[:, LIKELY] * mass))
    held = [
        lasting(run, makeup, Between(mass, mass), mass, assumptions) for run in runs
    ]
    partly = _holding([one.partial for one in held])
    fairly = _holding([one.moderate for one in held])
    rows = zip(OFFSETS, top, worked, cover, partly, fairly, strict=True)
    return tuple(_point(choice, *one) for one in rows), len(starts)


def _holding(lasts: Sequence[Three]) -> list[float]:
    """Return the share of years in which a hold still lasts, by day. [0–1]"""
    days = [one[LIKELY] for one in lasts]
    return [
        sum(count is None or offset < count for count in days) / len(days)
        for offset in OFFSETS
    ]


def _point(
    choice: ResidueChoice,
    offset: int,
    top: Days,
    worked: Days,
    cover: Days,
    partly: float,
    fairly: float,
) -> YearsPoint:
    return YearsPoint(
        offset_days=offset,
        on=choice.ended_on + dt.timedelta(offset),
        on_top_kg_m2=Between(float(top[0]), float(top[-1])),
        worked_in_kg_m2=Between(float(worked[0]), float(worked[-1])),
        cover=Between(float(cover[0]), float(cover[-1])),
        on_top_middle_kg_m2=float(top[1]),
        worked_in_middle_kg_m2=float(worked[1]),
        cover_middle=float(cover[1]),
        holds_partly=max(partly, fairly),
        holds_moderately=fairly,
    )
