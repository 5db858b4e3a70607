"""Searches for organic seed, and the kinds they stand for."""

from __future__ import annotations

import datetime as dt

from farm.models import Farm
from records.searching import kinds_searched, least_sources


def kinds_with_searches(farm: Farm, *, by: dt.date) -> set[int]:
    """Kinds of which a complete search stands on a day, by number; two queries."""
    return kinds_searched(farm, by=by)


def sources_needed(farm: Farm) -> int:
    """How many sources make a search complete on this farm."""
    return least_sources(farm)
