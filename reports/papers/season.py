"""The season report: from the ledger to what the page prints."""

from __future__ import annotations

import datetime as dt
from typing import Any

from farm.models import Farm
from farm.units import System
from reports.calc.season import summarize
from reports.calc.shapes.basics import Span
from reports.calc.shapes.season import SeasonPage
from reports.ledger import Register, season_ledger, season_register
from reports.papers.layout import caution_parts, farm_strips, field_parts


def season_paper(farm: Farm, year: int, *, today: dt.date) -> dict[str, Any]:
    """Everything the season report prints, as plain values."""
    season = Span(*farm.season(year))
    ledger = season_ledger(farm, season)
    page = summarize(
        ledger.fields,
        weather=ledger.weather,
        season=season,
        today=today,
        assumptions=ledger.assumptions,
        climate=ledger.climate,
    )
    register = season_register(farm, season)
    return laid_out(page, register, farm=farm, year=year, today=today)


def laid_out(
    page: SeasonPage, register: Register, *, farm: Farm, year: int, today: dt.date
) -> dict[str, Any]:
    """A season's figures with their drawings, as the templates ask for them."""
    return {
        "farm": farm,
        "year": year,
        "printed_on": today,
        "page": page,
        "register": register,
        "strips": tuple(farm_strips(page)),
        "cautions": tuple(caution_parts(page)),
        "parts": tuple(field_parts(page, System(farm.units))),
    }
