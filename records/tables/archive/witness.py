"""The records of a farm held against its history: do they say what was written down?"""

from __future__ import annotations

import ast
from collections.abc import Iterator
from typing import Any

from django.db import models
from django.utils.translation import gettext as _

from farm.models import Change, Farm, Record
from farm.writing import UNTOLD, VOIDING
from records.tables.archive.contents import by_word, kept

ROWS_AT_ONCE = 2000
WRITING = (Change.Verb.WROTE, Change.Verb.CHANGED)
# By field, what the history says last; by number, every record it tells of.
Said = dict[str, str]


def first_misfit(farm: Farm) -> str:
    """The first record that is not as its history has it, in a sentence; or "".

    A record without a history is not judged, nor is what was added to the tables
    after it was written. Links are left out: they are told by names that may change,
    or by numbers that may be others here.
    """
    written, voided = _said(farm)
    words = by_word()
    for one in kept():
        word = str(one.table.model._meta.model_name)
        if words[word] is one.table.model and issubclass(one.table.model, Record):
            for sentence in _misfits(one.table.name, one.table.model, farm, written):
                return sentence
            for sentence in _struck(one.table.name, one.table.model, farm, voided):
                return sentence
    return ""


def _said(farm: Farm) -> tuple[dict[str, dict[int, Said]], dict[str, dict[int, str]]]:
    written: dict[str, dict[int, Said]] = {}
    voided: dict[str, dict[int, str]] = {}
    rows = Change.objects.filter(farm=farm).order_by("number")
    told = rows.values_list("verb", "noun", "object_id", "before", "after", "reason")
    for verb, noun, number, before, after, reason in told.iterator(ROWS_AT_ONCE):
        if verb in WRITING:
            said = written.setdefault(noun, {}).setdefault(number, {})
            for name in before.keys() - after.keys():
                said.pop(name, None)
            said |= after
        elif verb == Change.Verb.VOIDED:
            voided.setdefault(noun, {})[number] = reason
        elif verb == Change.Verb.PUT_BACK:
            voided.setdefault(noun, {})[number] = ""
    return written, voided


def _misfits(
    table: str, model: type[Record], farm: Farm, written: dict[str, dict[int, Said]]
) -> Iterator[str]:
    told = written.get(str(model._meta.model_name), {})
    rows = model._default_manager.filter(farm=farm).prefetch_related(*model.PARTS)
    missing = set(told)
    for row in rows.order_by("pk").iterator(ROWS_AT_ONCE):
        missing.discard(row.pk)
        said = told.get(row.pk, {})
        for name, value in _values(row):
            if name in said and name != "object_id" and not _is_same(said[name], value):
                sentence = _(
                    "%(table)s.csv, “%(record)s”: %(column)s says “%(found)s”, "
                    "but its history says “%(said)s”."
                )
                yield sentence % {
                    "table": table,
                    "record": str(row)[:80],
                    "column": name,
                    "found": str(value)[:80],
                    "said": said[name][:80],
                }
    for number in sorted(missing):
        sentence = _("%(table)s.csv: record %(id)s of the history is missing.")
        yield sentence % {"table": table, "id": number}


def _struck(
    table: str, model: type[Record], farm: Farm, voided: dict[str, dict[int, str]]
) -> Iterator[str]:
    told = voided.get(str(model._meta.model_name), {})
    rows = model._default_manager.filter(farm=farm) if told else []
    for row in rows:
        if row.pk in told and row.void_reason != told[row.pk]:
            sentence = _(
                "%(table)s.csv, “%(record)s”: its history says it was struck out "
                "because “%(said)s”."
            )
            yield sentence % {
                "table": table,
                "record": str(row)[:80],
                "said": told[row.pk][:80],
            }


def _values(row: Record) -> Iterator[tuple[str, Any]]:
    """What a record and its parts say, by the names its history uses."""
    yield from _plain(row, skip=UNTOLD | VOIDING)
    for name in type(row).PARTS:
        parts = sorted(getattr(row, name).all(), key=lambda part: int(part.pk))
        for place, part in enumerate(parts, start=1):
            for key, value in _plain(part, skip=UNTOLD):
                yield f"{name}.{place}.{key}", value


def _plain(row: models.Model, *, skip: set[str]) -> Iterator[tuple[str, Any]]:
    for field in row._meta.concrete_fields:
        is_file = isinstance(field, models.FileField)
        if not (field.is_relation or is_file or field.name in skip):
            yield field.name, getattr(row, field.name)


def _is_same(said: str, value: Any) -> bool:
    if said == ("" if value is None else str(value)):
        return True
    if not isinstance(value, dict | list):
        return False
    # Databases put the keys of an object in an order of their own.
    try:
        return bool(ast.literal_eval(said) == value)
    except (ValueError, SyntaxError, MemoryError, RecursionError):
        return False
