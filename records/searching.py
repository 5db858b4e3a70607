"""Whether a search for organic seed is complete, by the farm's own minimum."""

from __future__ import annotations

import datetime as dt
from collections import defaultdict
from collections.abc import Iterable
from dataclasses import dataclass
from typing import Any

from django.db.models import OuterRef, QuerySet, Subquery

from farm.models import Farm, Record
from records.models import OwnAssumption, SeedLot, SeedSearch

# Common practice; the farm may set its own under this name.
LEAST_SOURCES = 3
OWN_KEY = "search_sources"
# A search is made for the seed of one season.
HOLDS = dt.timedelta(days=365)
# By lot or by kind; a lot's also by the kind that the search is for.
Days = defaultdict[tuple[str, int, int], list[dt.date]]


@dataclass(frozen=True, slots=True)
class SearchStanding:
    """What a search has of what it takes to be complete."""

    asked: int
    least: int
    is_complete: bool


def search_standing(row: Record) -> SearchStanding | None:
    """How a search stands by the farm's own minimum; None for what is no search."""
    if not isinstance(row, SeedSearch):
        return None
    least = least_sources(row.farm)
    by = row.searched_on
    complete = is_complete(row, least=least, by=by)
    return SearchStanding(len(sources_asked(row, by=by)), least, complete)


def least_sources(farm: Farm) -> int:
    """How many sources this farm asks before a search is complete."""
    rows = OwnAssumption.objects.on(farm).live().filter(key=OWN_KEY)
    found = rows.values_list("value", flat=True).first()
    return LEAST_SOURCES if found is None else round(found)


def with_least(rows: QuerySet[SeedSearch]) -> QuerySet[SeedSearch]:
    """Rows with the number their farm set for itself, in the same question."""
    own = OwnAssumption.objects.live().filter(farm=OuterRef("farm"), key=OWN_KEY)
    return rows.annotate(own_least=Subquery(own.order_by("pk").values("value")[:1]))


def was_complete(row: Any) -> bool:
    """Whether a search told ``with_least`` was complete on its day."""
    least = LEAST_SOURCES if row.own_least is None else round(row.own_least)
    return is_complete(row, least=least, by=row.searched_on)


def is_complete(search: SeedSearch, *, least: int, by: dt.date) -> bool:
    """Traits, a reason, and enough sources asked in the year up to a day."""
    enough = len(sources_asked(search, by=by)) >= least
    return bool(search.reason and search.traits) and enough


def sources_asked(search: SeedSearch, *, by: dt.date) -> set[str]:
    """Sources that were asked and answered in the year up to a day."""
    return {
        row.source.strip().casefold()
        for row in search.asked.all()
        if by - HOLDS <= row.asked_on <= by and row.answer
    }


def kinds_searched(farm: Farm, *, by: dt.date) -> set[int]:
    """Kinds of which a complete search stands on a day."""
    least = least_sources(farm)
    rows = SeedSearch.objects.on(farm).live().filter(searched_on__lte=by)
    return {
        row.kind_id
        for row in rows.prefetch_related("asked")
        if is_complete(row, least=least, by=by)
    }


def searches_of(farm: Farm) -> list[SeedSearch]:
    """Every live search with its sources, the first made first; two queries."""
    rows = SeedSearch.objects.on(farm).live().select_related("kind", "lot__kind")
    return list(rows.prefetch_related("asked").order_by("searched_on", "pk"))


def days_searched(farm: Farm) -> Days:
    """Days of searches that were complete when made."""
    return complete_days(searches_of(farm), least_sources(farm))


def complete_days(rows: Iterable[SeedSearch], least: int) -> Days:
    """Days of those searches that were complete when made."""
    found: Days = defaultdict(list)
    for row in rows:
        if is_complete(row, least=least, by=row.searched_on):
            lot, kind = row.lot_id or 0, row.kind_id
            of_lot = [("lot", lot, 0), ("lot", lot, kind)]
            for one in of_lot if lot else [("kind", kind, 0)]:
                found[one].append(row.searched_on)
    return found


def has_search(row: SeedLot, searched: Days) -> bool:
    """A search for this very lot, or for its kind in the year before it came.

    A mix needs one for each kind in it.
    """
    parts = {one.kind_id for one in row.components.all()}
    if not parts and searched[("lot", row.pk, 0)]:
        return True
    return all(
        searched[("lot", row.pk, kind)]
        or any(
            row.received_on - HOLDS <= day <= row.received_on
            for day in searched[("kind", kind, 0)]
        )
        for kind in parts or {row.kind_id}
    )
