"""The tables of an archive as plain values, row by row."""

from __future__ import annotations

from typing import Any

from django.core.exceptions import ValidationError
from django.utils.translation import gettext as _

from records.tables import texts
from records.tables.archive.opening import Archive, ArchiveError
from records.tables.cells import read
from records.tables.columns import Column
from records.tables.faults import Fault, faults_of
from records.tables.intake import Sheet, sheet
from records.tables.layout import Table

MOST_ROWS = 2_000_000
Row = dict[str, Any]


def values(archive: Archive, table: Table) -> list[Row]:
    """Every row's values by column, links still as keys; none of a table not there."""
    found = _sheet(archive, table)
    if found is None:
        return []
    columns = [column for column in found.columns if not column.is_name]
    return [
        {column.name: _value(table, column, n, cells) for column in columns}
        for n, cells in found.rows
    ]


def _sheet(archive: Archive, table: Table) -> Sheet | None:
    """A table of the archive; None where an older program knew none."""
    name = f"{table.name}.csv"
    if name not in archive.manifest.members:
        return None
    try:
        rows = texts.cells(archive.text(name))
        found = sheet(table, rows, pad=False, most=MOST_ROWS)
    except ValidationError as error:
        raise ArchiveError(f"{name}: {error.messages[0]}") from None
    for fault in found.faults:
        raise _told(fault)
    return found


def _value(table: Table, column: Column, number: int, cells: Row) -> Any:
    field = column.field
    try:
        value = read(cells[column.name], column.sort)
        if column.to is None and value not in field.empty_values:
            value = field.clean(value, None)
    except ValidationError as error:
        fault = next(faults_of(table, number, error, column=column.header))
        raise _told(fault) from None
    if value is None and not field.null and field.has_default():
        return field.get_default()
    return value


def _told(fault: Fault) -> ArchiveError:
    place = _("%(table)s.csv, row %(row)s, %(column)s: %(sentence)s")
    return ArchiveError(place % vars(fault))
