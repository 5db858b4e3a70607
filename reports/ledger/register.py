"""Lists that a paper prints as they were written: changes, voids, late entries."""

from __future__ import annotations

import datetime as dt
import zoneinfo
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from farm.models import Change, Farm
from reports.calc.shapes.basics import Span

# More than this is printed as a number, with the list left to the pages.
MOST_PRINTED = 400


@dataclass(frozen=True)
class ChangeTold:
    """One change as a paper prints it."""

    at: dt.datetime
    by: str
    verb: str
    noun: str
    label: str
    reason: str
    differs: tuple[tuple[str, str, str], ...]


@dataclass(frozen=True)
class Register:
    """Changes and voids written in a season; first writings are only counted."""

    written: int
    changes: tuple[ChangeTold, ...]
    left_out: int


def season_register(farm: Farm, season: Span) -> Register:
    """Mended and voided records of a season, in the order they were written."""
    zone = zoneinfo.ZoneInfo(farm.time_zone)
    rows = Change.objects.filter(
        farm=farm,
        at__gte=_begin(season.first, zone),
        at__lt=_begin(season.last + dt.timedelta(days=1), zone),
    )
    told = rows.exclude(verb=Change.Verb.WROTE)
    count = told.count()
    found = told.select_related("by").order_by("at", "pk")[:MOST_PRINTED]
    return Register(
        written=rows.filter(verb=Change.Verb.WROTE).count(),
        changes=tuple(_told(row) for row in found),
        left_out=max(0, count - MOST_PRINTED),
    )


def _begin(day: dt.date, zone: zoneinfo.ZoneInfo) -> dt.datetime:
    """Midnight as the farm's own clock strikes it."""
    return dt.datetime.combine(day, dt.time(), zone)


def _told(row: Change) -> ChangeTold:
    after: Mapping[str, Any] = row.after if row.verb != Change.Verb.LOADED else {}
    return ChangeTold(
        at=row.at,
        by=str(row.by),
        verb=row.get_verb_display(),
        noun=row.noun,
        label=row.label,
        reason=row.reason,
        differs=tuple(
            (name.replace("_", " "), str(row.before.get(name, "")), str(value))
            for name, value in after.items()
        ),
    )
