"""Balances of seed by kind and lot, for a season."""

from __future__ import annotations

import datetime as dt
from typing import Any

from farm.models import Farm
from reports.calc.season.lot_books import kind_books
from reports.calc.shapes.basics import Span
from reports.ledger.lot_books import lot_stories
from reports.ledger.searches import sources_needed
from reports.ledger.settings import settings_of
from reports.papers.sown_rates import sown_parts


def seed_books_paper(farm: Farm, year: int, *, today: dt.date) -> dict[str, Any]:
    """Each kind and lot with what came, was sown, left, was counted and is left."""
    season = Span(*farm.season(year))
    until = min(season.last, max(today, season.first))
    stories = lot_stories(farm, until=until)
    return {
        "farm": farm,
        "year": year,
        "season": season,
        "until": until,
        "kinds": sorted(
            kind_books(stories, Span(season.first, until)),
            key=lambda kind: not kind.is_off,
        ),
        "sown": sown_parts(farm, season.first, until, settings_of(farm)),
        "least_sources": sources_needed(farm),
    }
