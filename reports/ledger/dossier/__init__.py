"""The farm's books as an inspector would leaf through them, for the checks."""

from __future__ import annotations

import datetime as dt

from farm.models import Farm
from reports.calc.rules import LONGEST_MONTHS
from reports.calc.rules.dates import add_months
from reports.calc.shapes.basics import Span
from reports.calc.shapes.dossier import Dossier
from reports.ledger.dossier import (
    goods,
    inputs,
    land,
    looks,
    seed,
    sheets,
    stands,
    upkeep,
)
from reports.ledger.dossier.reading import Reading

# What a rule looks back from may lie a year before the season: a sowing in autumn.
LOOK_BACK_MONTHS = LONGEST_MONTHS + 12


def dossier(farm: Farm, season: Span, *, today: dt.date) -> Dossier:
    """Read a season and the years before it: the same queries for any size."""
    since = add_months(season.first, -LOOK_BACK_MONTHS)
    reading = Reading(farm, since, max(season.last, min(today, season.last)))
    told = {
        **land.told(reading),
        **seed.told(reading),
        **stands.told(reading),
        **inputs.told(reading),
        **goods.told(reading),
        **upkeep.told(reading),
        **sheets.told(reading),
        **looks.told(reading),
    }
    return Dossier(
        season=season,
        today=today,
        farm_address=farm.address,
        entries=tuple(reading.entries),
        **told,
    )


__all__ = ["dossier"]
