"""Everything written down of the weight of each lot: seven queries."""

from __future__ import annotations

import datetime as dt
from collections import defaultdict
from collections.abc import Mapping
from typing import Any

from farm.models import Farm
from records.models import LotMove, SeedLine, SeedLot, SeedSearch, StockCount
from records.searching import HOLDS, is_complete, least_sources
from reports.calc.shapes.lot_books import Entry, Event, LotStory

Events = Mapping[int, list[Event]]
Searches = defaultdict[tuple[str, int], list[dt.date]]


def lot_stories(farm: Farm, *, until: dt.date) -> tuple[LotStory, ...]:
    """Each live lot received by a day, with its events up to then."""
    rows = SeedLot.objects.on(farm).live().filter(received_on__lte=until)
    events = _events(farm, until)
    searched = _searched(farm)
    return tuple(
        LotStory(
            id=row.pk,
            label=row.lot_number,
            kind=row.kind.slug,
            kind_name=str(row.kind),
            supplier=row.supplier,
            is_organic=row.status == SeedLot.Status.ORGANIC,
            has_search=_has_search(row, searched),
            pls=row.pls_share,
            tested_on=row.tested_on,
            events=(
                Event(row.received_on, Entry.CAME, row.received_kg),
                *events[row.pk],
            ),
        )
        for row in rows.select_related("kind").order_by("kind__name", "tested_on", "pk")
    )


def _events(farm: Farm, until: dt.date) -> Events:
    found: defaultdict[int, list[Event]] = defaultdict(list)
    lines = SeedLine.objects.filter(
        lot__farm=farm, planting__voided_at=None, planting__sown_on__lte=until
    ).exclude(seed_kg=None)
    sown: Any = lines.values_list(
        "lot", "planting__sown_on", "seed_kg", "planting__field__name"
    )
    for lot, day, mass, where in sown:
        found[lot].append(Event(day, Entry.SOWN, mass, where))
    moves = LotMove.objects.on(farm).live().filter(moved_on__lte=until)
    for lot, day, what, mass in moves.values_list("lot", "moved_on", "what", "mass_kg"):
        found[lot].append(Event(day, Entry(what), mass))
    counts = StockCount.objects.on(farm).live().filter(counted_on__lte=until)
    told = counts.exclude(seed_lot=None).order_by("counted_on", "pk")
    for lot, day, mass in told.values_list("seed_lot", "counted_on", "mass_kg"):
        found[lot].append(Event(day, Entry.COUNTED, mass))
    return found


def _searched(farm: Farm) -> Searches:
    """Days of searches that were complete when they were made, by lot and by kind."""
    least = least_sources(farm)
    found: Searches = defaultdict(list)
    rows = SeedSearch.objects.on(farm).live().prefetch_related("asked")
    for row in rows:
        if is_complete(row, least=least, by=row.searched_on):
            about = ("lot", row.lot_id) if row.lot_id else ("kind", row.kind_id)
            found[about].append(row.searched_on)
    return found


def _has_search(row: SeedLot, searched: Searches) -> bool:
    """A search for this very lot, or for its kind in the year before it came."""
    if searched[("lot", row.pk)]:
        return True
    days = searched[("kind", row.kind_id)]
    return any(row.received_on - HOLDS <= day <= row.received_on for day in days)
