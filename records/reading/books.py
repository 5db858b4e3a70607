"""A workbook of readings as the text the readers of weather files know."""

from __future__ import annotations

import csv
import datetime as dt
import io
from typing import Any

from django.core.exceptions import ValidationError
from django.utils.translation import gettext as _
from openpyxl.utils import get_column_letter

from records.reading.weather.writing import digits
from records.tables import workbooks
from records.tables.cells import FormulaError, as_text

ZIPPED = b"PK\x03\x04"


def as_csv(data: bytes) -> bytes:
    """The first sheet with anything in it; any other file as it is.

    Raises
    ------
    ValidationError
        Where the workbook is damaged, too large or reckons in one of its cells.
    """
    if not data.startswith(ZIPPED):
        return data
    sheets = workbooks.read(data)
    rows = next((rows for rows in sheets.values() if rows), [])
    out = io.StringIO()
    writer = csv.writer(out)
    for number, row in enumerate(rows, start=1):
        # A sheet leaves out the empty cells at the end of a row.
        row += [None] * (len(rows[0]) - len(row))
        writer.writerow(
            _text(value, f"{get_column_letter(at)}{number}")
            for at, value in enumerate(row, start=1)
        )
    return out.getvalue().encode()


def _text(value: Any, place: str) -> str:
    if isinstance(value, FormulaError):
        sentence = _("Cell %s holds a formula. Put its value in its place.")
        raise ValidationError(sentence % place)
    if isinstance(value, dt.datetime):
        return (
            value.isoformat(sep=" ") if value.time() != dt.time() else str(value.date())
        )
    return digits(value) if isinstance(value, float) else as_text(value)
