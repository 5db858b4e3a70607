"""Lists that a paper prints as they were written: changes, voids, late entries."""

from __future__ import annotations

import datetime as dt
import zoneinfo
from dataclasses import dataclass

from farm.models import Change, ChangeHead, Farm
from records.history import label_of, lines, title_of
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
    # The farm's last entry when this was printed: on paper, it cannot be rewritten.
    entry: int = 0
    digest: str = ""


def season_register(farm: Farm, season: Span) -> Register:
    """Mended and voided records of a season, in the order they were written."""
    zone = zoneinfo.ZoneInfo(farm.time_zone)
    rows = Change.objects.filter(
        farm=farm,
        at__gte=_begin(season.first, zone),
        at__lt=_begin(season.last + dt.timedelta(days=1), zone),
    )
    told = rows.exclude(verb__in=[Change.Verb.WROTE, Change.Verb.REVIEWED])
    count = told.count()
    found = told.select_related("by").order_by("number")[:MOST_PRINTED]
    head = ChangeHead.objects.filter(farm=farm).first() or ChangeHead()
    return Register(
        written=rows.filter(verb=Change.Verb.WROTE).count(),
        changes=tuple(_told(row, farm) for row in found),
        left_out=max(0, count - MOST_PRINTED),
        entry=head.number,
        digest=head.digest,
    )


def _begin(day: dt.date, zone: zoneinfo.ZoneInfo) -> dt.datetime:
    """Midnight as the farm's own clock strikes it."""
    return dt.datetime.combine(day, dt.time(), zone)


def _told(row: Change, farm: Farm) -> ChangeTold:
    differs = lines(row, farm) if row.verb == Change.Verb.CHANGED else ()
    return ChangeTold(
        at=row.at,
        by=str(row.by),
        verb=row.get_verb_display(),
        noun=title_of(row.noun),
        label=label_of(row),
        reason=row.reason,
        differs=tuple(
            (str(one.label), str(one.before), str(one.after)) for one in differs
        ),
    )
