"""Records written down later than the day after they happened, of every noun."""

from __future__ import annotations

import datetime as dt
import zoneinfo
from dataclasses import dataclass
from typing import Any

from django.db.models import Count, F, Window
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


@dataclass(frozen=True)
class LateList:
    """The first of a season's late entries by day, and how many more there are."""

    entries: tuple[LateEntry, ...]
    left_out: int = 0


def late_entries(farm: Farm, season: Span) -> LateList:
    """What happened in a season and was written late: one query a noun."""
    dated = [noun for noun in NOUNS if noun.model.DATE_FIELD]
    found = [list(_late(noun, farm, season)) for noun in dated]
    total = sum(rows[0].total for rows in found if rows)
    told = [
        _told(noun, row)
        for noun, rows in zip(dated, found, strict=True)
        for row in rows
    ]
    told.sort(key=lambda one: (one.on, one.noun, one.label))
    entries = tuple(told[:MOST_PRINTED])
    return LateList(entries, total - len(entries))


def _late(noun: Noun, farm: Farm, season: Span) -> Any:
    """The rows of a noun, each with how many there are."""
    name = noun.model.DATE_FIELD
    zone = zoneinfo.ZoneInfo(farm.time_zone)
    days = {f"{name}__range": (season.first, season.last)}
    rows: Any = noun.model._default_manager.filter(farm=farm, voided_at=None, **days)
    rows = rows.annotate(written_on=TruncDate("written_at", tzinfo=zone))
    latest = F(name) + dt.timedelta(days=LATE_AFTER_DAYS)
    rows = rows.filter(written_on__gt=latest).select_related(*noun.related)
    rows = rows.select_related("written_by").order_by(name, "pk")
    return rows.annotate(total=Window(Count("pk")))[:MOST_PRINTED]


def _told(noun: Noun, row: Any) -> LateEntry:
    return LateEntry(
        noun=noun.title,
        label=str(row),
        on=getattr(row, noun.model.DATE_FIELD),
        written_on=row.written_on,
        by=str(row.written_by),
    )
