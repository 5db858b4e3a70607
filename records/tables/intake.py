"""Files into tables as they stand there: which column is which, which rows are any."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, field
from typing import Any

from django.core.exceptions import ValidationError
from django.utils.translation import gettext as _

from records.tables import texts, workbooks
from records.tables.columns import Column
from records.tables.faults import Fault
from records.tables.layout import Table

# Saving holds SQLite's one writer's lock: it must end before others stop waiting.
MOST_ROWS = 1_000
MOST_PART_ROWS = 5_000
HEADER = re.compile(r"\s*(?P<name>[^\[\]]*?)\s*(\[(?P<unit>[^\[\]]*)\])?\s*")


@dataclass
class Sheet:
    """A table as read: raw cells by column, and what was wrong on the way."""

    table: Table
    columns: list[Column]
    rows: list[tuple[int, dict[str, Any]]] = field(default_factory=list)
    faults: list[Fault] = field(default_factory=list)


def sheets_in(
    files: Iterable[tuple[str, bytes]], tables: Sequence[Table]
) -> dict[str, Sheet]:
    """Read files, each told to hold the table of a name; the first may hold all."""
    found: dict[str, Sheet] = {}
    for name, data in files:
        for told, rows, is_ragged in _grids(name, data, tables):
            if told.name in found:
                raise ValidationError(_("The table “%s” is there twice.") % told.name)
            most = MOST_PART_ROWS if told.link else MOST_ROWS
            found[told.name] = sheet(told, rows, pad=not is_ragged, most=most)
    return found


def sheet(
    table: Table, rows: list[list[Any]], *, pad: bool, most: int = MOST_ROWS
) -> Sheet:
    """Put a grid of cells under the columns its first row names."""
    if not rows:
        raise ValidationError(_("The table “%s” is empty.") % table.name)
    if len(rows) > most + 1:
        raise ValidationError(
            _("More than %s rows are too many at once. Load them in parts.")
            % f"{most:,}"
        )
    header = [str("" if cell is None else cell) for cell in rows[0]]
    while header and not header[-1].strip():
        header.pop()
    places, faults = _places(table, header)
    read = Sheet(table, [column for column in places if column], faults=faults)
    for number, row in enumerate(rows[1:], start=2):
        _take(read, places, number, row, pad=pad)
    return read


def _grids(
    name: str, data: bytes, tables: Sequence[Table]
) -> Iterator[tuple[Table, list[list[Any]], bool]]:
    asked = next(table for table in tables if table.name == name)
    if not data.strip():
        raise ValidationError(_("The table “%s” is empty.") % name)
    if not data.startswith(b"PK"):
        yield asked, texts.cells(data), True
        return
    grids = {title: rows for title, rows in workbooks.read(data).items() if rows}
    if len(grids) == 1:
        yield asked, next(iter(grids.values())), False
        return
    titles = {table.name[: workbooks.SHEET_NAME]: table for table in tables}
    for title, rows in grids.items():
        if title not in titles:
            raise ValidationError(
                _("The sheet “%(title)s” is none of these: %(names)s. Take it out.")
                % {"title": title, "names": ", ".join(titles)}
            )
        yield titles[title], rows, False
    if asked.name not in {titles[title].name for title in grids}:
        raise ValidationError(_("There is no sheet named “%s” in it.") % name)


def _places(table: Table, header: list[str]) -> tuple[list[Column | None], list[Fault]]:
    """Which column stands at each place, and what no column could be found for."""
    places: list[Column | None] = []
    faults: list[Fault] = []
    for at, text in enumerate(header, start=1):
        try:
            column = _column(table, text, at)
            if column in places:
                raise ValidationError(_("This column is there twice."))
            places.append(column)
        except ValidationError as error:
            places.append(None)
            faults.append(Fault(table.name, 1, text.strip(), error.messages[0]))
    if table.link and table.link not in {column.name for column in places if column}:
        sentence = _("The column that says what the row belongs to is missing.")
        faults.append(Fault(table.name, 1, table.link, sentence))
    return places, faults


def _column(table: Table, text: str, at: int) -> Column:
    told = HEADER.fullmatch(text)
    name = told["name"].lower() if told else ""
    if told is None or not name:
        raise ValidationError(_("Column %s has no name.") % at)
    column = table.by_name.get(name)
    if column is None:
        raise ValidationError(_("This table has no such column."))
    unit = (told["unit"] or "").strip()
    if unit and unit != column.unit:
        raise ValidationError(
            _("The header says %(told)s; the cells must be in %(unit)s.")
            % {"told": unit, "unit": column.unit or _("no unit")}
        )
    return column


def _take(
    read: Sheet, places: list[Column | None], number: int, row: list[Any], *, pad: bool
) -> None:
    """Add one row, unless nothing stands in it or its cells do not fit the header."""
    if all(_is_empty(cell) for cell in row):
        return
    cells, beyond = row[: len(places)], row[len(places) :]
    if pad:
        cells = cells + [None] * (len(places) - len(cells))
    if len(cells) < len(places) or not all(_is_empty(cell) for cell in beyond):
        sentence = _("This row has %(cells)s cells, the header %(names)s.")
        told = {"cells": len(row), "names": len(places)}
        read.faults.append(Fault(read.table.name, number, "", sentence % told))
        return
    found = zip(places, cells, strict=True)
    read.rows.append((number, {column.name: raw for column, raw in found if column}))


def _is_empty(cell: Any) -> bool:
    return cell is None or (isinstance(cell, str) and not cell.strip())
