"""Everything written down of the weight of each lot: eight queries."""

from __future__ import annotations

import datetime as dt
from collections import defaultdict
from collections.abc import Mapping
from typing import Any

from farm.models import Farm
from records.models import LotMove, SeedLine, SeedLot, StockCount
from records.searching import days_searched, has_search
from reports.calc.shapes.lot_books import Entry, Event, LotStory

Events = Mapping[int, list[Event]]


def lot_stories(farm: Farm, *, until: dt.date) -> tuple[LotStory, ...]:
    """Each live lot received by a day, with its events up to then."""
    rows = SeedLot.objects.on(farm).live().filter(received_on__lte=until)
    events = _events(farm, until)
    searched = days_searched(farm)
    rows = rows.select_related("kind").prefetch_related("components__kind")
    rows = rows.order_by("kind__name", "tested_on", "pk")
    return tuple(_story(row, events[row.pk], has_search(row, searched)) for row in rows)


def _story(row: Any, events: list[Event], is_searched: bool) -> LotStory:
    mixed = [(str(kind), pls) for kind, pls in row.contents()]
    names = " + ".join(name for name, _pls in mixed)
    return LotStory(
        id=row.pk,
        label=row.lot_number,
        kind=row.kind.slug,
        kind_name=names,
        supplier=row.supplier,
        is_organic=row.status == SeedLot.Status.ORGANIC,
        has_search=is_searched,
        pls=row.pls_share,
        tested_on=row.tested_on,
        events=(Event(row.received_on, Entry.CAME, row.received_kg), *events),
        mixed=tuple(mixed) if row.components.all() else (),
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
