"""A farm's changes in the words and the units its pages use."""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from django.apps import apps
from django.db import models
from django.urls import reverse
from django.utils.functional import Promise
from django.utils.translation import gettext_lazy as _

from farm.models import Change, Farm, Record
from farm.models.record import LATE_AFTER_DAYS
from farm.templatetags.days import day_said
from farm.templatetags.measures import written
from farm.templatetags.money import money, money_by_weight
from records.facts import measure_of
from records.forms.by_weight import count_by_weight, dose
from records.models import Application, Attachment, CertifierNumber
from records.nouns import BY_MODEL
from records.rules_called import called

# What loading a file tells, which is no field of any record.
LOADED = {
    "file": _("file"),
    "first": _("first day"),
    "last": _("last day"),
    "days": _("days"),
}
# Told only to say what an amount is measured by, or of no use to a reader.
SILENT = {"measure", "file", "noun", "object_id", "key"}
Text = str | Promise
# Measures that are no single unit.
PLAINLY: Mapping[str, Callable[[float, Farm], str]] = {
    "money": money,
    "money_by_weight": money_by_weight,
    "dose": dose,
    "count": count_by_weight,
}


@dataclass(frozen=True)
class Line:
    """One thing that a change changed."""

    label: Text
    before: Text
    after: Text


@dataclass(frozen=True)
class Told:
    """One change, ready to be read."""

    change: Change
    title: str
    label: str
    address: str
    lines: tuple[Line, ...]
    is_late: bool


def told(changes: Iterable[Change], farm: Farm) -> list[Told]:
    """Tell changes in their order, with one more query for those of attachments."""
    rows = list(changes)
    owners = _owners(rows)
    places = [_place(row, owners) for row in rows]
    opened = _opened(places, farm)
    return [
        Told(
            change=row,
            title=title_of(row.noun),
            label=label_of(row),
            address=_address(place, farm) if place in opened else "",
            lines=tuple(lines(row, farm)),
            is_late=_is_late(row, farm),
        )
        for row, place in zip(rows, places, strict=True)
    ]


def model_named(noun: str) -> type[Record] | None:
    """The record a change tells of, which may have left the house since."""
    for house in ("records", "farm"):
        model = apps.all_models[house].get(noun)
        if model is not None and issubclass(model, Record):
            return model
    return None


def title_of(noun: str) -> str:
    model = model_named(noun)
    return str(model._meta.verbose_name) if model else _plain(noun)


def label_of(change: Change) -> str:
    """What a record was called; a rule's number was once called by its key."""
    if change.noun != CertifierNumber._meta.model_name:
        return change.label
    key, colon, value = change.label.partition(": ")
    return f"{called(key)}{colon}{value}"


def lines(change: Change, farm: Farm) -> Iterator[Line]:
    """What a change changed, by the names and in the units of the farm's pages."""
    before, after = change.before, change.after
    if change.verb == Change.Verb.LOADED:
        for name, text in after.items():
            yield Line(LOADED.get(name, _plain(name)), "", text)
        return
    model = model_named(change.noun)
    hidden = model.PRIVATE if model and farm.is_read_by_crew else frozenset()
    for name in _in_order(before | after, model):
        if name in SILENT | hidden or (not before.get(name) and not after.get(name)):
            continue
        field, label = _field(model, name)
        yield Line(
            label,
            shown(field, before.get(name, ""), beside=before, farm=farm),
            shown(field, after.get(name, ""), beside=after, farm=farm),
        )


def _in_order(names: Iterable[str], model: type[Record] | None) -> list[str]:
    """As the record's own page has them: its fields, then the rows under it."""
    fields = [field.name for field in model._meta.concrete_fields] if model else []
    places = {name: place for place, name in enumerate(fields)}

    def place(name: str) -> tuple[int, str, int]:
        row = name.split(".")
        number = int(row[1]) if len(row) == 3 and row[1].isdigit() else 0
        return places.get(name, len(places)), row[0] if number else "", number

    return sorted(names, key=place)


def _field(
    model: type[Record] | None, name: str
) -> tuple[models.Field[Any, Any] | None, Text]:
    """The field a kept name stands for, and what a page calls it."""
    first, _dot, rest = name.partition(".")
    place, _dot, inner = rest.partition(".")
    found = _get(model, first)
    if inner and found is not None and found.is_relation:
        row = found.related_model
        field = _get(row, inner)
        called = field.verbose_name if field is not None else _plain(inner)
        return field, f"{row._meta.verbose_name} {place}: {called}"
    return found, found.verbose_name if hasattr(found, "verbose_name") else _plain(name)


def _get(model: Any, name: str) -> Any:
    names = {field.name: field for field in model._meta.get_fields()} if model else {}
    return names.get(name)


def shown(field: Any, text: str, *, beside: Mapping[str, str], farm: Farm) -> Text:
    """A value as it was kept, made readable; what cannot be read stands as it is."""
    if text == "" or field is None:
        return text
    if isinstance(field, models.JSONField):
        return _("drawn")
    if isinstance(field, models.BooleanField):
        return _("yes") if text == "True" else _("no")
    if field.choices:
        said: dict[str, Text] = {str(key): word for key, word in field.flatchoices}
        return said.get(text, text)
    try:
        return _measured(field, text, beside, farm)
    except ValueError:
        return text


def _measured(field: Any, text: str, beside: Mapping[str, str], farm: Farm) -> Text:
    if isinstance(field, models.DateField):
        return day_said(dt.date.fromisoformat(text), "j M Y")
    if not isinstance(field, models.FloatField):
        return text
    how = measure_of(field.name)
    if field.name == "amount_si" and "measure" in beside:
        by_volume = beside["measure"] == Application.Measure.VOLUME
        how = "volume" if by_volume else "mass"
    if how in {"", "number"}:
        return f"{float(text):.12g}"
    if how in PLAINLY:
        return PLAINLY[how](float(text), farm)
    return written(float(text), how, farm)


def _plain(name: str) -> str:
    return name.replace(".", " ").replace("_", " ")


def _owners(rows: list[Change]) -> dict[int, tuple[str, int]]:
    """Whose attachment it is, by the attachment's number."""
    noun = Attachment._meta.model_name
    ids = {row.object_id for row in rows if row.noun == noun}
    if not ids:
        return {}
    kept = Attachment.objects.filter(pk__in=ids)
    return {row.pk: (row.noun, row.object_id) for row in kept}


def _place(row: Change, owners: Mapping[int, tuple[str, int]]) -> tuple[str, int]:
    """The record a change is about; of an attachment, that which it is kept with."""
    if row.noun == Attachment._meta.model_name:
        return owners.get(row.object_id, ("", 0))
    return row.noun, row.object_id


def _opened(places: Iterable[tuple[str, int]], farm: Farm) -> set[tuple[str, int]]:
    """Those that have a page, for an inspector within the period opened to them."""
    told = {place for place in places if place[0] in BY_MODEL}
    if farm.period is None:
        return told
    return {
        (model, pk)
        for model in {model for model, _pk in told}
        for pk in BY_MODEL[model]
        .model._default_manager.seen_on(farm)
        .filter(pk__in={pk for name, pk in told if name == model})
        .values_list("pk", flat=True)
    }


def _address(place: tuple[str, int], farm: Farm) -> str:
    model, number = place
    return reverse("records:page", args=[farm.slug, BY_MODEL[model].slug, number])


def _is_late(row: Change, farm: Farm) -> bool:
    """First written down later than the day after it happened."""
    model = model_named(row.noun)
    day = row.after.get(model.DATE_FIELD, "") if model else ""
    if row.verb != Change.Verb.WROTE or not day:
        return False
    late = farm.today(row.at) - dt.date.fromisoformat(day)
    return late.days > LATE_AFTER_DAYS
