"""A farm's season, read from the ledger and reckoned."""

from __future__ import annotations

import datetime as dt

from farm.models import Farm
from reports.calc.season import summarize
from reports.calc.shapes.basics import Span
from reports.calc.shapes.season import SeasonPage
from reports.ledger import SeasonLedger, season_ledger


def season_page(farm: Farm, season: Span, *, today: dt.date) -> SeasonPage:
    """The season of every field of a farm."""
    return reckoned(season_ledger(farm, season), season, today=today)


def reckoned(ledger: SeasonLedger, season: Span, *, today: dt.date) -> SeasonPage:
    """What a ledger comes to in one season."""
    return summarize(
        ledger.fields,
        weather=ledger.weather,
        season=season,
        today=today,
        assumptions=ledger.assumptions,
        climate=ledger.climate,
        southern=ledger.southern,
    )
