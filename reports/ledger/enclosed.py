"""Pictures and papers kept with the records, as an index."""

from __future__ import annotations

import datetime as dt
import zoneinfo
from dataclasses import dataclass

from farm.models import Farm
from records.models import Attachment
from records.nouns import BY_MODEL
from reports.calc.shapes.basics import Span


@dataclass(frozen=True)
class Enclosed:
    """One picture or paper: what it shows, of which record, and its fingerprint."""

    shows: str
    what: str
    record: int
    type: str
    sha256: str


def attachments_of(farm: Farm, season: Span) -> tuple[Enclosed, ...]:
    """Those written down in a season, in order: one query."""
    zone = zoneinfo.ZoneInfo(farm.time_zone)
    first, last = (
        dt.datetime.combine(day, dt.time(), zone)
        for day in (season.first, season.last + dt.timedelta(days=1))
    )
    rows = Attachment.objects.on(farm).live()
    rows = rows.filter(written_at__gte=first, written_at__lt=last).order_by("pk")
    return tuple(
        Enclosed(
            shows=row.shows,
            what=BY_MODEL[row.noun].title if row.noun in BY_MODEL else row.noun,
            record=row.object_id,
            type=row.get_type_display(),
            sha256=row.sha256,
        )
        for row in rows
    )
