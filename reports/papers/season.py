"""The season report: from the ledger to what the page prints."""

from __future__ import annotations

import datetime as dt
from typing import Any

from farm.models import Farm
from farm.units import System
from reports.calc.shapes.basics import Span
from reports.calc.shapes.season import SeasonPage
from reports.collector import at_rest
from reports.ledger import Register, season_register
from reports.ledger.attachments import season_attachments
from reports.ledger.land import plots_of
from reports.ledger.late import late_entries
from reports.ledger.searches import season_searches
from reports.papers.land import land_part
from reports.papers.layout import caution_parts, farm_strips, field_parts
from reports.papers.reckoned import season_page


@at_rest()
def season_paper(farm: Farm, year: int, *, today: dt.date) -> dict[str, Any]:
    """Everything the season report prints, as plain values."""
    season = Span(*farm.season(year))
    page = season_page(farm, season, today=today)
    register = season_register(farm, season)
    paper = laid_out(page, register, farm=farm, year=year, today=today)
    system = System(farm.units)
    return paper | {
        "land": land_part(plots_of(farm), page, today=today, system=system),
        "searches": season_searches(farm, season),
        "attachments": season_attachments(farm, season),
        "late": late_entries(farm, season),
    }


def laid_out(
    page: SeasonPage, register: Register, *, farm: Farm, year: int, today: dt.date
) -> dict[str, Any]:
    """A season's figures with their drawings, as the templates ask for them."""
    parts = tuple(field_parts(page, System(farm.units)))
    return {
        "farm": farm,
        "year": year,
        "printed_on": today,
        "page": page,
        "register": register,
        "strips": tuple(farm_strips(page)),
        "cautions": tuple(caution_parts(page)),
        "parts": parts,
        "busy": tuple(one for one in parts if one.is_busy),
        "still": tuple(one for one in parts if not one.is_busy),
    }
