"""The one way to write: save and note the change, in one transaction."""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping, Sequence
from typing import Any, TypeVar

from django.db import models, transaction

from farm.models import Change, ChangeHead, Record, User

R = TypeVar("R", bound=Record)
Parts = Mapping[str, Sequence[models.Model]]

# Kept by the record itself, so a change of them says nothing new.
UNTOLD = {"id", "farm", "client_key", "written_by", "written_at"}
VOIDING = {"voided_at", "voided_by", "void_reason"}


def write(record: R, *, by: User, now: dt.datetime, parts: Parts | None = None) -> R:
    """Save a new or mended record, with its parts, and note what changed.

    A form that was sent twice carries the same key: the second one finds the
    record of the first and writes nothing.
    """
    with transaction.atomic():
        head = ChangeHead.held(record.farm)
        if record.pk is None:
            sent_before = _sent_before(record)
            if sent_before is not None:
                return sent_before
        before = {} if record.pk is None else _as_kept(record)
        if record.pk is None:
            record.written_by, record.written_at = by, now
        record.save()
        for name, rows in (parts or {}).items():
            _replace(record, name, rows)
        verb = Change.Verb.CHANGED if before else Change.Verb.WROTE
        after = _as_kept(record)
        if after != before:
            _add(head, record, verb=verb, by=by, now=now, before=before, after=after)
            record.settle(by=by, now=now)
    return record


def void(record: Record, *, by: User, now: dt.datetime, reason: str) -> None:
    """Strike a record out: the row stays, with who, when and why."""
    with transaction.atomic():
        head = ChangeHead.held(record.farm)
        if type(record)._default_manager.filter(pk=record.pk, voided_at=None).exists():
            record.voided_by, record.voided_at, record.void_reason = by, now, reason
            record.save(update_fields=sorted(VOIDING))
            _add(head, record, verb=Change.Verb.VOIDED, by=by, now=now, reason=reason)


def put_back(record: Record, *, by: User, now: dt.datetime, reason: str) -> None:
    """Lift a void: the record stands again, and both acts stay in the history.

    Raises ValidationError where another record has taken its place meanwhile.
    """
    with transaction.atomic():
        head = ChangeHead.held(record.farm)
        if type(record)._default_manager.filter(pk=record.pk, voided_at=None).exists():
            return
        record.voided_by, record.voided_at, record.void_reason = None, None, ""
        record.validate_constraints()
        record.save(update_fields=sorted(VOIDING))
        _add(head, record, verb=Change.Verb.PUT_BACK, by=by, now=now, reason=reason)


def review(record: Record, *, by: User, now: dt.datetime) -> None:
    """Say that somebody looked a record over as it stands."""
    note(record, verb=Change.Verb.REVIEWED, by=by, now=now)


def note(
    record: Record,
    *,
    verb: Change.Verb,
    by: User,
    now: dt.datetime,
    before: Mapping[str, str] | None = None,
    after: Mapping[str, str] | None = None,
    reason: str = "",
) -> Change:
    """Add one line to the farm's changes; only what differs is kept."""
    with transaction.atomic():
        return _add(
            ChangeHead.held(record.farm),
            record,
            verb=verb,
            by=by,
            now=now,
            before=before,
            after=after,
            reason=reason,
        )


def _add(
    head: ChangeHead,
    record: Record,
    *,
    verb: Change.Verb,
    by: User,
    now: dt.datetime,
    before: Mapping[str, str] | None = None,
    after: Mapping[str, str] | None = None,
    reason: str = "",
) -> Change:
    """Seal a change to the last one; the head is held, so nobody else can."""
    old, new = dict(before or {}), dict(after or {})
    differs = {key for key in old | new if old.get(key) != new.get(key)}
    differs |= {beside for key, beside in record.TOLD_WITH.items() if key in differs}
    change = Change(
        farm=record.farm,
        number=head.number + 1,
        at=now,
        by=by,
        verb=verb.value,
        noun=record._meta.model_name or "",
        object_id=record.pk,
        label=str(record)[:200],
        before={key: str(old[key]) for key in sorted(differs) if key in old},
        after={key: str(new[key]) for key in sorted(differs) if key in new},
        reason=reason,
        prev=head.digest,
    )
    change.digest = change.sealed()
    change.save(force_insert=True)
    head.number, head.digest = change.number, change.digest
    head.save(update_fields=["number", "digest"])
    return change


def told(record: models.Model) -> dict[str, str]:
    """What a record says, as plain text by field name."""
    kept = {}
    for field in record._meta.concrete_fields:
        if field.name in UNTOLD | VOIDING:
            continue
        value = getattr(record, field.name)
        kept[field.name] = "" if value is None else str(value)
    return kept


def _sent_before(record: R) -> R | None:
    manager: models.Manager[Any] = type(record)._default_manager
    found: R | None = manager.filter(client_key=record.client_key).first()
    return found


def _as_kept(record: Record) -> dict[str, str]:
    row = type(record)._default_manager.get(pk=record.pk)
    kept = told(row)
    for name in type(record).PARTS:
        for place, part in enumerate(getattr(row, name).order_by("pk"), start=1):
            link = getattr(row, name).field.name
            for key, value in told(part).items():
                if key != link and value:
                    kept[f"{name}.{place}.{key}"] = value
    return kept


def _replace(record: Record, name: str, rows: Sequence[models.Model]) -> None:
    manager = getattr(record, name)
    manager.all().delete()
    link = manager.field.name
    for row in rows:
        row.pk = None
        setattr(row, link, record)
        row.save(force_insert=True)
