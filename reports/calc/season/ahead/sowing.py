"""When to sow a kind: the chance of every day of the coming year."""

from __future__ import annotations

import datetime as dt

import numpy as np
from numpy.typing import NDArray

from reports.calc import forecast, windows
from reports.calc.season.ahead.chances import Chances, chances_of
from reports.calc.season.ahead.growing import Growing
from reports.calc.season.ahead.weeks import share_warm
from reports.calc.shapes.ahead import Caveat, Why, Window, WindowKind
from reports.calc.shapes.ledger import Figure, KindFacts

Days = NDArray[np.float64]


def sow_window(
    kind: KindFacts, growing: Growing, *, first: dt.date, wanted: float | None = None
) -> Window:
    """Return the next days good for sowing a kind, with the chance of bloom.

    ``wanted`` is the least share of years; the farm's own choice where None.
    """
    least = growing.assumptions["sow_chance"] if wanted is None else wanted
    chances = chances_of(kind, growing, first=first)
    covers = bool(np.isnan(chances.bloom).all())
    reached = chances.share(chances.cover if covers else chances.bloom)
    warm, soil = warm_soil(kind, growing, first=first, days=len(reached))
    caveats = (*chances.caveats, *soil)
    if covers:
        caveats = (*caveats, Caveat.BLOOM_UNKNOWN)
    years = int(forecast.years_known(chances.frost).max(initial=0))
    found = windows.sow_days(
        first=first, grows=reached, warm=warm, wanted=least, covers=covers
    )
    if found is None:
        return _none(chances, reached, years, caveats)
    if found.closes is None and not np.isfinite(chances.frost).any():
        caveats = (*caveats, Caveat.NO_FROST_ON_RECORD)
    return Window(
        WindowKind.SOW,
        found.opens,
        found.closes,
        found.opens_why,
        found.closes_why,
        chances.how,
        years=years,
        chance=min(found.chances),
        sources=chances.sources,
        caveats=tuple(dict.fromkeys(caveats)),
        is_next_years=found.opens.year > first.year,
    )


def _none(
    chances: Chances, reached: Days, years: int, caveats: tuple[Caveat, ...]
) -> Window:
    """Return a window without days: the years tell nothing, or no day will do."""
    told = ~np.isnan(reached)
    past = (Caveat.PAST_EVERY_WINDOW,) if told.any() else ()
    return Window(
        WindowKind.SOW,
        None,
        None,
        Why.NOT_KNOWN,
        Why.NOT_KNOWN,
        chances.how,
        years=years,
        chance=float(np.nanmax(reached)) if told.any() else None,
        sources=chances.sources,
        caveats=tuple(dict.fromkeys((*caveats, *past))),
    )


def soil_wanted(kind: KindFacts) -> Figure | None:
    """Return the warmth of soil a kind is sown into, None where no figure says."""
    rows = (*kind.all("sow_soil_temp"), *kind.all("min_soil_temp"))
    return next((row for row in rows if not row.unverified), None)


def warm_soil(
    kind: KindFacts, growing: Growing, *, first: dt.date, days: int
) -> tuple[Days, tuple[Caveat, ...]]:
    """Return the share of years with soil warm enough by day, and what it rests on."""
    figure = soil_wanted(kind)
    if figure is None:
        return np.ones(days), (Caveat.SOIL_UNKNOWN,)
    shares = share_warm(
        growing.sky,
        [first + dt.timedelta(day) for day in range(days)],
        least_c=figure.low,
        over_days=int(growing.assumptions["soil_warm_days"]),
    )
    return shares, (Caveat.SOIL_FROM_AIR,)
