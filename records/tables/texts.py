"""Tables as comma-separated text, RFC 4180, in UTF-8."""

from __future__ import annotations

import csv
import io
from collections.abc import Iterable, Iterator

from django.core.exceptions import ValidationError
from django.utils.translation import gettext as _

from records.tables.cells import WORDED, Plain, as_text, guard
from records.tables.layout import Table

# An outline may have 20,000 corners, far more than the csv module takes by itself.
csv.field_size_limit(5_000_000)

MARKS = (",", ";", "\t")


def lines(table: Table, rows: Iterable[list[Plain]]) -> Iterator[str]:
    """The text of a table, line by line, its header first."""
    out = io.StringIO(newline="")
    writer = csv.writer(out, lineterminator="\r\n")
    worded = [column.sort in WORDED for column in table.columns]
    writer.writerow(table.headers)
    yield _taken(out)
    for row in rows:
        texts = [as_text(value) for value in row]
        cells = zip(texts, worded, strict=True)
        writer.writerow([guard(text) if is_text else text for text, is_text in cells])
        yield _taken(out)


def cells(data: bytes) -> list[list[str]]:
    """Every row of a text file, as it stands there."""
    text = decoded(data)
    if "\0" in text:
        raise ValidationError(_("This is neither a table of text nor a workbook."))
    reader = csv.reader(
        io.StringIO(text, newline=""), delimiter=_mark(text), strict=True
    )
    rows: list[list[str]] = []
    try:
        rows.extend(reader)
    except csv.Error:
        raise ValidationError(
            _("Row %s cannot be read: its quotation marks do not match.")
            % (len(rows) + 1)
        ) from None
    return rows


def decoded(data: bytes) -> str:
    marked = data.startswith((b"\xff\xfe", b"\xfe\xff"))
    try:
        return data.decode("utf-16" if marked else "utf-8-sig")
    except UnicodeDecodeError:
        raise ValidationError(
            _("Some letters of the file cannot be read. Save it as UTF-8.")
        ) from None


def _mark(text: str) -> str:
    """What stands between the cells; some spreadsheets do not write commas."""
    header = text.partition("\n")[0]
    return max(MARKS, key=header.count)


def _taken(out: io.StringIO) -> str:
    text = out.getvalue()
    out.seek(0)
    out.truncate()
    return text
