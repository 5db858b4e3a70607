"""Whether a search for organic seed is complete, by the farm's own minimum."""

from __future__ import annotations

import datetime as dt

from farm.models import Farm
from records.models import OwnAssumption, SeedSearch

# Common practice; the farm may set its own under this name.
LEAST_SOURCES = 3
OWN_KEY = "search_sources"
# A search is made for the seed of one season.
HOLDS = dt.timedelta(days=365)


def least_sources(farm: Farm) -> int:
    """How many sources this farm asks before a search is complete."""
    rows = OwnAssumption.objects.on(farm).live().filter(key=OWN_KEY)
    found = rows.values_list("value", flat=True).first()
    return LEAST_SOURCES if found is None else round(found)


def is_complete(search: SeedSearch, *, least: int, by: dt.date) -> bool:
    """Traits, a reason, and enough sources asked in the year up to a day."""
    asked = {
        row.source.strip().casefold()
        for row in search.asked.all()
        if by - HOLDS <= row.asked_on <= by and row.answer
    }
    return bool(search.reason and search.traits) and len(asked) >= least


def kinds_searched(farm: Farm, *, by: dt.date) -> set[int]:
    """Kinds of which a complete search stands on a day."""
    least = least_sources(farm)
    rows = SeedSearch.objects.on(farm).live().filter(searched_on__lte=by)
    return {
        row.kind_id
        for row in rows.prefetch_related("asked")
        if is_complete(row, least=least, by=by)
    }
