"""The rules of a noun's entry form, for rows that came by table.

A form shown for a record just written, and sent back untouched, must hold: so every
rule the form has is a rule of the table as well.
"""

from __future__ import annotations

import datetime as dt
import math
from collections.abc import Iterator
from typing import Any

from django import forms
from django.utils.translation import gettext as _

from farm.models import Record
from records.guesses import form_for
from records.nouns import Noun
from records.tables.cells import Sort, as_text
from records.tables.faults import by_field
from records.tables.layout import Table

# Boxes show fewer digits than are kept.
SLACK = 0.005
# The number of the part, or None for the record itself; the field; the sentence.
Misfit = tuple[int | None, str, str]


def misfits(noun: Noun, table: Table, row: Record, *, today: dt.date) -> list[Misfit]:
    """What the noun's form would not take as it now stands."""
    shown = form_for(noun, _fresh(row), None, today=today)
    form = form_for(noun, _fresh(row), posted(shown), today=today)
    if not form.is_valid():
        return [*_of_form(form, None), *_of_parts(form)]
    return list(_unreckoned(form, table, row))


def posted(form: Any) -> dict[str, Any]:
    """What a browser would send back of an untouched form."""
    sent: dict[str, Any] = {}
    for name in form.fields:
        box = form[name]
        value = _sent(box.field.widget, box.value())
        if value is not None:
            sent[box.html_name] = value
    for rows in getattr(form, "formsets", ()):
        for inner in [rows.management_form, *rows.forms]:
            sent |= posted(inner)
    return sent


def _sent(widget: forms.Widget, value: Any) -> Any:
    if isinstance(widget, forms.CheckboxInput):
        return "on" if value else None
    if isinstance(widget, forms.FileInput):
        return None
    shown = widget.format_value(value)
    if isinstance(shown, list) and not getattr(widget, "allow_multiple_selected", 0):
        return shown[0] if shown else None
    return shown


def _fresh(row: Record) -> Any:
    """The record as kept, since forms write into what they are given."""
    return type(row)._default_manager.get(pk=row.pk)


def _of_form(form: Any, part: int | None) -> Iterator[Misfit]:
    for name, errors in form.errors.as_data().items():
        for error in errors:
            for _field, sentence in by_field(error):
                yield part, ("" if name == "__all__" else name), sentence


def _of_parts(form: Any) -> Iterator[Misfit]:
    before = 0
    for rows in getattr(form, "formsets", ()):
        for number, inner in enumerate(rows.forms, start=before):
            yield from _of_form(inner, number)
        for sentence in rows.non_form_errors():
            yield None, "", str(sentence)
        before += rows.initial_form_count()


def _unreckoned(form: Any, table: Table, row: Record) -> Iterator[Misfit]:
    """What the form reckons from the other boxes, and finds to be something else."""
    for column in table.columns:
        name = column.field.name
        if column.to or column.is_told or name in form.fields:
            continue
        kept, reckoned = getattr(row, name), getattr(form.instance, name)
        if not _is_same(kept, reckoned, column.sort):
            sentence = _("From the rest of the row this would be %s.")
            yield None, name, sentence % as_text(reckoned)


def _is_same(kept: Any, reckoned: Any, sort: Sort) -> bool:
    if sort is Sort.NUMBER and None not in (kept, reckoned):
        return math.isclose(kept, reckoned, rel_tol=SLACK)
    return bool(kept == reckoned)
