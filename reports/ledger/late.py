"""Records written down later than the day after they happened, of every noun."""

from __future__ import annotations

import datetime as dt
import zoneinfo
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from django.db.models import F
from django.db.models.functions import TruncDate

from farm.models import Farm
from farm.models.record import LATE_AFTER_DAYS
from records.nouns import NOUNS, Noun
from reports.calc.shapes.basics import Span

# More than this is told as a number, with the list left to the pages.
MOST_PRINTED = 400


@dataclass(frozen=True)
class LateEntry:
    """One record: its day, and when and by whom it was written down."""

    noun: str
    label: str
    on: dt.date
    written_on: dt.date
    by: str


def late_entries(farm: Farm, season: Span) -> tuple[LateEntry, ...]:
    """What happened in a season and was written late: one query a noun."""
    told = [row for noun in NOUNS for row in _late(noun, farm, season)]
    return tuple(sorted(told, key=lambda one: (one.on, one.noun, one.label)))


def _late(noun: Noun, farm: Farm, season: Span) -> Iterator[LateEntry]:
    name = noun.model.DATE_FIELD
    if not name:
        return
    zone = zoneinfo.ZoneInfo(farm.time_zone)
    days = {f"{name}__range": (season.first, season.last)}
    rows: Any = noun.model._default_manager.filter(farm=farm, voided_at=None, **days)
    rows = rows.annotate(written_on=TruncDate("written_at", tzinfo=zone))
    latest = F(name) + dt.timedelta(days=LATE_AFTER_DAYS)
    rows = rows.filter(written_on__gt=latest).select_related(*noun.related)
    for row in rows.select_related("written_by")[:MOST_PRINTED]:
        yield LateEntry(
            noun=noun.title,
            label=str(row),
            on=getattr(row, name),
            written_on=row.written_on,
            by=str(row.written_by),
        )
