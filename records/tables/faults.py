"""What is wrong with a table, by row and column, in plain words."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from django.core.exceptions import ValidationError
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


def _sentence(error: ValidationError) -> str:
    return str(SENTENCES.get(error.code or "") or " ".join(error.messages))
