"""The tables of parts beside a noun's own: whose they are, and what they say."""

from __future__ import annotations

import uuid
from collections.abc import Mapping, Sequence
from typing import Any

from django.core.exceptions import ValidationError
from django.db import models
from django.utils.translation import gettext as _

from farm.models import Record
from records.tables.faults import Fault, faults_of
from records.tables.filling import Filling, content
from records.tables.intake import Sheet
from records.tables.layout import Table

Row = tuple[int, dict[str, Any]]
Told = dict[str, list[models.Model]]


class PartRows:
    """The rows of every table of parts given, sorted by the records they are of."""

    def __init__(
        self, tables: Sequence[Table], sheets: Mapping[str, Sheet], filling: Filling
    ) -> None:
        self.tables = [table for table in tables if table.name in sheets]
        self.filling = filling
        self.faults: list[Fault] = []
        self.rows = {t.name: self._by_record(sheets[t.name]) for t in self.tables}

    def of(self, row: Record, faults: list[Fault]) -> Told:
        """The record's parts as the tables tell them; of a table not given, none."""
        told: Told = {}
        for table in self.tables:
            told[table.related] = []
            for number, cells in self.rows[table.name].get(row.client_key, []):
                part = table.model()
                found = list(self.filling.fill(table, part, number, cells))
                if not found:
                    found = self._unsound(table, part, number)
                faults += found
                told[table.related].append(part)
        return told

    def are_kept(self, row: Record, told: Told) -> bool:
        """Whether the record's parts are already as told."""
        columns = {table.related: content(table) for table in self.tables}
        return all(
            [[column.tell(part) for column in columns[name]] for part in parts]
            == [
                [column.tell(part) for column in columns[name]]
                for part in getattr(row, name).order_by("pk")
            ]
            for name, parts in told.items()
        )

    def place(self, row: Record, part: int) -> tuple[Table, int] | None:
        """Where the part of that number stands: its table and its row there."""
        places = [
            (table, number)
            for table in self.tables
            for number, _cells in self.rows[table.name].get(row.client_key, [])
        ]
        return places[part] if part < len(places) else None

    def _unsound(self, table: Table, part: models.Model, number: int) -> list[Fault]:
        try:
            part.full_clean(exclude={table.link})
        except ValidationError as error:
            return list(faults_of(table, number, error))
        return []

    def _by_record(self, sheet: Sheet) -> dict[uuid.UUID, list[Row]]:
        found: dict[uuid.UUID, list[Row]] = {}
        for number, cells in sheet.rows:
            try:
                key = self._owner(sheet.table, cells)
                found.setdefault(key, []).append((number, cells))
            except ValidationError as error:
                link = sheet.table.link
                self.faults += faults_of(sheet.table, number, error, column=link)
        return found

    def _owner(self, table: Table, cells: dict[str, Any]) -> uuid.UUID:
        keys = self.filling.keys
        key = keys.named(cells.get(table.link))
        if key is None or key not in keys.taken:
            sentence = _("No row of the table “%s” has this key.")
            raise ValidationError(sentence % self.filling.main.name)
        return key
