"""Which records somebody looked over, and whether they still stand as they did."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterable
from dataclasses import dataclass

from django.db import transaction

from farm.models import Change, ChangeHead, Farm, Record, User
from farm.writing import review


@dataclass(frozen=True)
class Review:
    """The last time a record was looked over; a change since then outdates it."""

    by: User
    at: dt.datetime
    stands: bool


def reviews(farm: Farm, rows: Iterable[Record]) -> dict[int, Review]:
    """The last review of each of these records of one noun, in one query."""
    found = list(rows)
    if not found:
        return {}
    changes = Change.objects.filter(
        farm=farm,
        noun=found[0]._meta.model_name,
        object_id__in=[row.pk for row in found],
        verb__in=[Change.Verb.REVIEWED, Change.Verb.CHANGED, Change.Verb.VOIDED],
    )
    last: dict[int, Review] = {}
    for change in changes.select_related("by").order_by("number"):
        known = last.get(change.object_id)
        if change.verb == Change.Verb.REVIEWED:
            last[change.object_id] = Review(change.by, change.at, stands=True)
        elif known:
            last[change.object_id] = Review(known.by, known.at, stands=False)
    return last


def look_over(record: Record, *, by: User, now: dt.datetime) -> None:
    """Note a review, unless one stands already or the record is voided."""
    with transaction.atomic():
        ChangeHead.held(record.farm)
        last = reviews(record.farm, [record]).get(record.pk)
        if record.voided_at is None and not (last and last.stands):
            review(record, by=by, now=now)
