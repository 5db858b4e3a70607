"""Which years of the books to read for a lot, or where nothing is asked."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterable

from django.db.models import Max

from farm.models import Farm
from records.models import HarvestLot, Planting
from records.nouns import BY_SLUG
from reports.calc.shapes.basics import Span

# What a lot leads to is over by then.
AHEAD_DAYS = 3 * 366


def years_of(farm: Farm, noun: str, pk: int, *, today: dt.date) -> Span | None:
    """The days around one record of the farm, or None where there is none."""
    named = BY_SLUG.get(noun)
    row = named.rows().seen_on(farm).live().filter(pk=pk).first() if named else None
    if row is None:
        return None
    day: dt.date = (
        row.happened_on or getattr(row, "planned_on", None) or newest(farm, today=today)
    )
    return Span(day, day + dt.timedelta(days=AHEAD_DAYS))


def newest(farm: Farm, *, today: dt.date) -> dt.date:
    """The last day on which anything was sown or harvested; today, if never."""
    sown = Planting.objects.on(farm).live().aggregate(day=Max("sown_on"))["day"]
    cut = HarvestLot.objects.on(farm).live().aggregate(day=Max("harvested_on"))["day"]
    last = max((day for day in (sown, cut) if day), default=today)
    return last if farm.period is None else min(last, farm.period[1])


def open_to(farm: Farm, nouns: Iterable[str]) -> frozenset[tuple[str, int]] | None:
    """The records of these nouns that an inspector may pick; None is every one."""
    if farm.period is None:
        return None
    return frozenset(
        (noun, pk)
        for noun in nouns
        for pk in BY_SLUG[noun]
        .model._default_manager.seen_on(farm)
        .values_list("pk", flat=True)
    )
