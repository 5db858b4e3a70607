"""Pictures and papers that belong to a season, for the list in its report."""

from __future__ import annotations

import datetime as dt
import zoneinfo
from dataclasses import dataclass
from typing import Any

from django.db.models import OuterRef, Q, QuerySet, Subquery

from farm.models import Change, Farm
from records.history import title_of
from records.models import Attachment
from records.nouns import NOUNS
from reports.calc.shapes.basics import Span

# Both strike at whether a record stands.
STRIKING = (Change.Verb.VOIDED, Change.Verb.PUT_BACK)


@dataclass(frozen=True)
class AttachmentFacts:
    """One picture or paper: what it shows, of which record, and how to know it."""

    shows: str
    type: str
    noun: str
    record: str
    taken_on: dt.date | None
    written_by: str
    written_on: dt.date
    bytes: int
    sha256: str
    # Struck out itself, or with the record it belongs to; it is kept all the same.
    void_reason: str
    record_void_reason: str


def season_attachments(farm: Farm, span: Span) -> tuple[AttachmentFacts, ...]:
    """Attachments taken or kept in a season, or of a record of it: one query.

    Voided ones are among them, with their reason: a list that left them out
    would be shorter than what is kept.
    """
    zone = zoneinfo.ZoneInfo(farm.time_zone)
    rows = (
        Attachment.objects.on(farm)
        .filter(_in_season(farm, span))
        .annotate(
            record=Subquery(_last("label")),
            record_struck=Subquery(_last("verb", verb__in=STRIKING)),
            record_void_reason=Subquery(_last("reason", verb__in=STRIKING)),
        )
        .select_related("written_by")
        .order_by("noun", "object_id", "pk")
    )
    return tuple(
        AttachmentFacts(
            shows=row.shows,
            type=row.get_type_display(),
            noun=title_of(row.noun),
            record=row.record or "",
            taken_on=row.taken_on,
            written_by=str(row.written_by),
            written_on=row.written_at.astimezone(zone).date(),
            bytes=row.bytes,
            sha256=row.sha256,
            void_reason=row.void_reason,
            record_void_reason=row.record_void_reason
            if row.record_struck == Change.Verb.VOIDED
            else "",
        )
        for row in rows
    )


def _in_season(farm: Farm, span: Span) -> Q:
    zone = zoneinfo.ZoneInfo(farm.time_zone)
    first = dt.datetime.combine(span.first, dt.time(), zone)
    after = dt.datetime.combine(span.last + dt.timedelta(days=1), dt.time(), zone)
    found = Q(taken_on__range=(span.first, span.last))
    found |= Q(taken_on=None, written_at__gte=first, written_at__lt=after)
    for noun in NOUNS:
        day = noun.model.DATE_FIELD
        if day:
            here = {f"{day}__range": (span.first, span.last)}
            ids = noun.model._default_manager.filter(farm=farm, **here).values("pk")
            found |= Q(noun=noun.model._meta.model_name, object_id__in=ids)
    return found


def _last(name: str, **asked: Any) -> QuerySet[Any, Any]:
    """What the last change of the record says: what it was called, why it went."""
    same = {name: OuterRef(name) for name in ("farm", "noun", "object_id")}
    rows: QuerySet[Any, Any] = Change.objects.filter(**same, **asked)
    return rows.order_by("-number").values(name)[:1]
