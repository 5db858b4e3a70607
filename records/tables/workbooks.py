"""Tables as the sheets of a workbook, with text as text and no formulas."""

from __future__ import annotations

import datetime as dt
import io
import re
import zipfile
from collections.abc import Iterable, Iterator, Sequence
from typing import Any

from django.core.exceptions import ValidationError
from django.utils.translation import gettext as _
from openpyxl import Workbook, load_workbook
from openpyxl.cell import WriteOnlyCell

from records.tables.cells import GUARDED, FormulaError, Plain, as_text
from records.tables.layout import Table

# A workbook's cell holds 32,767 characters, some of which count twice.
MOST_IN_A_CELL = 16_000
FURTHER = re.compile(r"(.+) \+\d+")
# Characters that cannot stand in XML are written as their number, as ECMA-376 says;
# so is a carriage return, which a reader would drop.
UNFIT = re.compile(r"[\x00-\x08\x0b-\x1f\ufffe\uffff]|_(?=x[0-9A-Fa-f]{4}_)")
WRITTEN_OUT = re.compile(r"_x([0-9A-Fa-f]{4})_")
# Days before this are counted wrongly in workbooks.
FIRST_DAY = dt.date(1900, 3, 1)

MOST_PARTS = 500
MOST_UNPACKED = 200 * 1024 * 1024
MOST_ROWS = 1_048_576
MOST_COLUMNS = 500
SHEET_NAME = 31


def write(sheets: Iterable[tuple[Table, Iterable[list[Plain]]]]) -> bytes:
    return write_grids((table.name, _grid(table, rows)) for table, rows in sheets)


def _grid(table: Table, rows: Iterable[list[Plain]]) -> Iterator[list[Plain]]:
    return _spread(table, [[_quoted(value) for value in row] for row in rows])


def write_grids(grids: Iterable[tuple[str, Iterable[Sequence[Plain]]]]) -> bytes:
    """Rows as they stand, the first of each sheet its header."""
    book = Workbook(write_only=True)
    for name, rows in grids:
        sheet = book.create_sheet(name[:SHEET_NAME])
        sheet.freeze_panes = "B2"
        for row in rows:
            sheet.append([_cell(sheet, value) for value in row])
    out = io.BytesIO()
    book.save(out)
    return out.getvalue()


def _spread(table: Table, rows: list[list[Plain]]) -> Iterator[list[Plain]]:
    """Rows with their header, very long text running on in columns of its own."""
    pieces = [
        max((-(-len(as_text(row[at])) // MOST_IN_A_CELL) for row in rows), default=1)
        for at in range(len(table.columns))
    ]
    counts = [max(1, count) for count in pieces]
    yield [
        header if n == 0 else f"{header} +{n}"
        for header, count in zip(table.headers, counts, strict=True)
        for n in range(count)
    ]
    for row in rows:
        yield [
            piece
            for value, count in zip(row, counts, strict=True)
            for piece in (_cut(as_text(value), count) if count > 1 else [value])
        ]


def _cut(text: str, count: int) -> list[Plain]:
    return [text[n * MOST_IN_A_CELL : (n + 1) * MOST_IN_A_CELL] for n in range(count)]


def _quoted(value: Plain) -> Plain:
    """Double a quotation mark that the way in would take off as a guard."""
    is_guarded = isinstance(value, str) and GUARDED.match(value)
    return f"'{value}" if is_guarded else value


def _cell(sheet: Any, value: Plain) -> Any:
    if value is None or value == "":
        return None
    if isinstance(value, dt.date) and value < FIRST_DAY:
        value = value.isoformat()
    cell = WriteOnlyCell(sheet)
    if isinstance(value, str):
        # Set apart from the constructor, which takes "=North" for a formula.
        cell._value = UNFIT.sub(lambda hit: f"_x{ord(hit[0]):04X}_", value)
        cell.data_type = "s"
        cell.quotePrefix = True
    elif isinstance(value, int | float):
        # As text, since openpyxl writes one digit less than a number may need.
        cell._value, cell.data_type = as_text(value), "n"
    else:
        cell.value = value
        cell.number_format = "yyyy-mm-dd" if isinstance(value, dt.date) else "hh:mm:ss"
    return cell


def read(data: bytes) -> dict[str, list[list[Any]]]:
    """Every sheet's rows by its name; a formula's cell holds a FormulaError."""
    _check_size(data)
    try:
        book = load_workbook(io.BytesIO(data), read_only=True)
        return {sheet.title: _rows(sheet) for sheet in book.worksheets}
    except ValidationError:
        raise
    # A broken workbook fails in openpyxl with whatever error comes first.
    except Exception:
        raise ValidationError(_("The workbook is damaged or not one.")) from None


def _check_size(data: bytes) -> None:
    """Refuse what unpacks to far more than it seems."""
    try:
        parts = zipfile.ZipFile(io.BytesIO(data)).infolist()
    except (zipfile.BadZipFile, ValueError, OSError, NotImplementedError):
        raise ValidationError(_("The workbook is damaged or not one.")) from None
    total = sum(part.file_size for part in parts)
    if len(parts) > MOST_PARTS or total > MOST_UNPACKED:
        raise ValidationError(_("The workbook is too large to be read."))


def _rows(sheet: Any) -> list[list[Any]]:
    sheet.reset_dimensions()
    rows: list[list[Any]] = []
    for count, row in enumerate(sheet.iter_rows(), start=1):
        if count > MOST_ROWS or len(row) > MOST_COLUMNS:
            raise ValidationError(_("The workbook is too large to be read."))
        rows.append([_value(cell) for cell in row])
    while rows and not any(value is not None for value in rows[-1]):
        rows.pop()
    return _joined(rows) if rows else rows


def _value(cell: Any) -> Any:
    if cell.data_type in {"f", "e"}:
        return FormulaError()
    if isinstance(cell.value, str):
        return WRITTEN_OUT.sub(lambda hit: chr(int(hit[1], 16)), cell.value)
    return cell.value


def _joined(rows: list[list[Any]]) -> list[list[Any]]:
    """Put the pieces of very long text together again."""
    header = [str(value or "") for value in rows[0]]
    if not any(FURTHER.fullmatch(name) for name in header):
        return rows
    joined: list[list[Any]] = []
    for row in rows:
        out: list[Any] = []
        for name, value in zip(header, row, strict=False):
            if not FURTHER.fullmatch(name):
                out.append(value)
            elif out and row is not rows[0] and isinstance(value, str):
                out[-1] = f"{out[-1] or ''}{value}"
        joined.append(out)
    return joined
