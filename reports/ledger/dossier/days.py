"""Which years of the books to read for a lot, or where nothing is asked."""

from __future__ import annotations

import datetime as dt

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
    row = named.rows().on(farm).live().filter(pk=pk).first() if named else None
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
    return max((day for day in (sown, cut) if day), default=today)
