"""Searches for organic seed: what was asked, and which lots and kinds they cover."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass

from farm.models import Farm
from records.models import SeedLot, SeedSearch
from records.searching import (
    HOLDS,
    complete_days,
    has_search,
    is_complete,
    kinds_searched,
    least_sources,
    searches_of,
)
from reports.calc.shapes.basics import Span


@dataclass(frozen=True)
class AskedTold:
    """One source asked."""

    source: str
    on: dt.date
    answer: str


@dataclass(frozen=True)
class SearchTold:
    """One search as a paper prints it."""

    kind_name: str
    traits: str
    on: dt.date
    reason: str
    lot: str
    asked: tuple[AskedTold, ...]
    is_complete: bool


@dataclass(frozen=True)
class Searches:
    """The searches of a season, and the lots that a complete one covers."""

    told: tuple[SearchTold, ...]
    lots: frozenset[int]
    least: int


def kinds_with_searches(farm: Farm, *, by: dt.date) -> set[int]:
    """Kinds of which a complete search stands on a day, by number; three queries."""
    return kinds_searched(farm, by=by)


def sources_needed(farm: Farm) -> int:
    """How many sources make a search complete on this farm."""
    return least_sources(farm)


def season_searches(farm: Farm, season: Span) -> Searches:
    """Searches made for a season, the year before it counted in; five queries."""
    least = least_sources(farm)
    rows = searches_of(farm)
    days = complete_days(rows, least)
    others = SeedLot.objects.on(farm).live().exclude(status=SeedLot.Status.ORGANIC)
    others = others.prefetch_related("components")
    span = (season.first - HOLDS, season.last)
    return Searches(
        told=tuple(
            _told(row, least) for row in rows if span[0] <= row.searched_on <= span[1]
        ),
        lots=frozenset(lot.pk for lot in others if has_search(lot, days)),
        least=least,
    )


def _told(row: SeedSearch, least: int) -> SearchTold:
    return SearchTold(
        kind_name=str(row.kind),
        traits=row.traits,
        on=row.searched_on,
        reason=row.get_reason_display(),
        lot=row.lot.lot_number if row.lot else "",
        asked=tuple(
            AskedTold(one.source, one.asked_on, one.answer) for one in row.asked.all()
        ),
        is_complete=is_complete(row, least=least, by=row.searched_on),
    )
