"""Taking an entry that waited on a telephone: once, whole, or not at all."""

from __future__ import annotations

import datetime as dt
import uuid
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from django.db import transaction
from django.http import QueryDict
from django.utils.translation import gettext as _
from django.utils.translation import ngettext

from farm.models import Farm, Record, User
from records.acts.again import rates
from records.acts.base import Act
from records.acts.entry import complaint, complaints, filled, named_places, photographs
from records.acts.sheet import Sheet
from records.forms.seeds_once import SeedsOnceForm
from records.models import SentEntry

MOST_RATES = 4


@dataclass
class Answer:
    """What a telephone is told: taken, with words; or refused, with every reason."""

    words: str = ""
    errors: tuple[str, ...] = ()
    sheet: Sheet | None = None

    @property
    def is_taken(self) -> bool:
        return not self.errors


def send(
    act: Act,
    farm: Farm,
    typed: QueryDict,
    files: Mapping[str, Any],
    *,
    key: uuid.UUID,
    by: User,
    now: dt.datetime,
) -> Answer:
    """Write an entry down, unless its key has come before: then answer as before.

    The key is kept in the same transaction as the records. A second sender of the
    same entry waits for the first and then finds it.
    """
    with transaction.atomic():
        told = {"act": act.slug, "got_at": now}
        kept, is_new = SentEntry.objects.get_or_create(
            farm=farm, by=by, key=key, defaults=told
        )
        if not is_new:
            return Answer(kept.answer)
        answer = _written(act, farm, typed, files, key=key, by=by, now=now)
        if answer.is_taken:
            kept.answer = answer.words[:400]
            kept.save(update_fields=["answer"])
        else:
            transaction.set_rollback(True)
    return answer


def _written(
    act: Act,
    farm: Farm,
    typed: QueryDict,
    files: Mapping[str, Any],
    *,
    key: uuid.UUID,
    by: User,
    now: dt.datetime,
) -> Answer:
    today = farm.today(now)
    # Two people's entries are two, whatever their telephones made up as keys.
    key = uuid.uuid5(key, f"{farm.pk} {by.pk}")
    asked = typed.getlist("place")
    found = named_places(act, farm, asked)
    made = filled(act, farm, found, typed=typed, key=key, today=today)
    pictures = photographs(made, files, key=key, today=today)
    errors = [*_places_lost(asked, found), *_seed_errors(act, farm, typed)]
    is_sound = made.is_valid()
    errors += [] if is_sound or errors else complaints(made)
    errors += [str(one) for _row, form in pictures for one in _picture_errors(form)]
    records = None if errors else made.record(by=by, now=now)
    if records is None:
        return Answer(errors=tuple(errors or complaints(made)), sheet=made)
    _keep_pictures(records, made, pictures, by=by, now=now)
    return Answer(" ".join([told(len(records)), *rates(records, farm)[:MOST_RATES]]))


def told(count: int) -> str:
    words = ngettext("%(n)s record written down.", "%(n)s records written down.", count)
    return words % {"n": count}


def _places_lost(asked: list[str], found: list[Any]) -> list[str]:
    if not asked:
        return [_("Pick at least one place.")]
    if len(found) < len(set(asked)):
        return [
            _(
                "A field or planting of this entry is no longer there: it was voided "
                "meanwhile. Pick the places again."
            )
        ]
    return []


def _seed_errors(act: Act, farm: Farm, typed: QueryDict) -> list[str]:
    if not act.sows:
        return []
    form = SeedsOnceForm(typed, farm=farm)
    weighed = [
        typed[f"at{n}-seed_kg"]
        for n in typed.getlist("place")
        if typed.get(f"at{n}-seed_kg")
    ]
    if form.is_valid() and any(weighed) and not form.can_divide:
        return [
            _(
                "The weight of a mix is divided by the rates of its kinds: give each "
                "kind its rate, or leave the weight empty."
            )
        ]
    return [
        complaint(str(form.fields[name].label), "", str(error))
        for name, errors in form.errors.items()
        for error in errors
    ]


def _picture_errors(form: Any) -> list[Any]:
    return [one for errors in form.errors.values() for one in errors]


def _keep_pictures(
    records: list[Record], made: Sheet, pictures: Any, *, by: User, now: dt.datetime
) -> None:
    """Files come last: a picture on the disk is not undone with the tables."""
    written = dict(zip((id(row) for row in made.rows), records, strict=True))
    for row, form in pictures:
        form.row = written[id(row)]
        form.record(by=by, now=now)
