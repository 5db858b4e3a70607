"""The cells of a row into the fields of a record."""

from __future__ import annotations

import uuid
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from django.core.exceptions import ValidationError
from django.db import models
from django.utils.translation import gettext as _

from records.tables.cells import FormulaError, Sort, read, seen
from records.tables.columns import KEY, VOIDED, Column
from records.tables.faults import Fault, faults_of
from records.tables.keys import Keys
from records.tables.layout import Table
from records.tables.links import Links


def content(table: Table) -> list[Column]:
    """The columns that make a row what it is: neither its key nor its history."""
    return [
        column
        for column in table.columns
        if not column.is_told
        and not column.is_name
        and column.name not in {KEY, VOIDED, table.link}
    ]


@dataclass
class Filling:
    main: Table
    links: Links
    keys: Keys

    def fill(
        self, table: Table, row: models.Model, number: int, cells: dict[str, Any]
    ) -> Iterator[Fault]:
        """Set every field a cell tells of; yield what is wrong with the others."""
        for column in content(table):
            names = {column.name, f"{column.name}_name"} if column.to else {column.name}
            if not names & cells.keys():
                continue
            try:
                value = self._linked(column, cells) if column.to else None
                value = value or self._value(column, cells.get(column.name))
                setattr(row, column.field.name, value)
            except ValidationError as error:
                yield from faults_of(table, number, error, column=column.name)

    def reason(self, cells: dict[str, Any], row: Any) -> str:
        """Why the row is voided; empty where it stands."""
        if VOIDED not in cells:
            return str(row.void_reason)
        return str(cell(cells[VOIDED], Sort.TEXT)).strip()

    def own_links(self, cells: dict[str, Any]) -> set[uuid.UUID]:
        """The keys by which a row names other rows of its own table."""
        named = set()
        for column in self.main.columns:
            if column.to is self.main.model and not column.is_name:
                try:
                    key = self.keys.named(cells.get(column.name))
                except ValidationError:
                    continue
                named |= {key} if key else set()
        return named

    def _linked(self, column: Column, cells: dict[str, Any]) -> Any:
        assert column.to is not None
        key = cell(cells.get(column.name), Sort.KEY)
        if key and column.to is self.main.model:
            key = str(self.keys.named(key))
        if key:
            return self.links.by_key(column.to, key)
        name = cell(cells.get(f"{column.name}_name"), Sort.TEXT)
        return self.links.by_name(column.to, name) if name.strip() else None

    def _value(self, column: Column, raw: Any) -> Any:
        field = column.field
        value = cell(raw, column.sort) if column.to is None else None
        if field.choices and value not in (None, ""):
            return _chosen(field, value)
        is_silent = value is None or (value == "" and not field.blank)
        if is_silent and not field.null and field.has_default():
            return field.get_default()
        return value


def cell(raw: Any, sort: Sort) -> Any:
    if isinstance(raw, FormulaError):
        raise ValidationError(_("A formula stands here. Put its value in its place."))
    return read(raw, sort)


def _chosen(field: models.Field[Any, Any], value: Any) -> Any:
    """One of the words a field takes, or the words it is spoken in."""
    words = {str(said).casefold(): kept for kept, said in field.flatchoices}
    words |= {str(kept).casefold(): kept for kept, _said in field.flatchoices}
    try:
        return words[str(value).strip().casefold()]
    except KeyError:
        known = ", ".join(str(kept) for kept, _said in field.flatchoices)
        sentence = _("“%(value)s” is none of these: %(known)s.")
        raise ValidationError(
            sentence % {"value": seen(value), "known": known}
        ) from None
