"""What is wrong with a table, by row and column, in plain words."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from django.core.exceptions import ValidationError
from django.db import models
from django.db.models import F, Q
from django.utils.translation import gettext_lazy as _

from records.tables.columns import KEY
from records.tables.layout import Table

# Django speaks of fields; in a table they are cells.
SENTENCES = {
    "null": _("Something must stand here."),
    "blank": _("Something must stand here."),
    "required": _("Something must stand here."),
    "invalid_choice": _("What is named here is voided, or does not fit this row."),
}
IMPOSSIBLE = _("This cannot be: it is too little, too much or does not fit the rest.")
# Boxes of entry forms that are called otherwise than what they fill.
BOXES = {"client_key": KEY, "area": "area_m2", "outline_text": "outline"}


@dataclass(frozen=True)
class Fault:
    """One thing wrong; the header is row 1, as in a spreadsheet."""

    table: str
    row: int
    column: str
    sentence: str


def faults_of(
    table: Table, row: int, error: ValidationError, *, column: str = ""
) -> Iterator[Fault]:
    """An error's sentences, each at the column it is about."""
    for name, sentence in by_field(error):
        if not column and not name:
            name, sentence = _by_constraint(table.model, sentence)
        yield Fault(table.name, row, column or column_of(table, name), sentence)


def column_of(table: Table, name: str) -> str:
    """What the column is called that fills a field or a box; "" for the whole row."""
    name = BOXES.get(name, name)
    return name if name in table.by_name else ""


def by_field(error: ValidationError) -> Iterator[tuple[str, str]]:
    """Every sentence of an error with the field it is about, "" for the whole row."""
    if not hasattr(error, "error_dict"):
        for one in error.error_list:
            yield "", _sentence(one)
        return
    for name, errors in error.error_dict.items():
        for inner in errors:
            for one in inner.error_list:
                yield ("" if name == "__all__" else name), _sentence(one)


def _by_constraint(model: type[models.Model], sentence: str) -> tuple[str, str]:
    """The field that a rule of the table is about, and the rule in plain words."""
    for rule in model._meta.constraints:
        if sentence != rule.get_violation_error_message():
            continue
        is_unsaid = rule.violation_error_message == rule.default_violation_error_message
        name = next((n for n in _named(rule) if n not in {"farm", "kind"}), "")
        return name, str(IMPOSSIBLE) if is_unsaid else sentence
    return "", sentence


def _named(rule: models.BaseConstraint) -> Iterator[str]:
    if isinstance(rule, models.UniqueConstraint):
        yield from rule.fields
        yield from (str(vars(e)["name"]) for e in rule.expressions if isinstance(e, F))
    elif isinstance(rule, models.CheckConstraint) and isinstance(rule.condition, Q):
        yield from _in(rule.condition)


def _in(condition: Q) -> Iterator[str]:
    for child in condition.children:
        if isinstance(child, Q):
            yield from _in(child)
        elif isinstance(child, tuple):
            yield str(child[0]).split("__")[0]


def _sentence(error: ValidationError) -> str:
    return str(SENTENCES.get(error.code or "") or " ".join(error.messages))
