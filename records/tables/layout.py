"""Which tables a noun has, and the rows that stand in them."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Set
from dataclasses import dataclass, replace
from typing import Any

from django.db import models

from farm.models import User
from records.nouns import Noun
from records.tables.cells import Plain
from records.tables.columns import Column, columns_of

ROWS_A_FETCH = 500


@dataclass(frozen=True)
class Table:
    """One table: its name, its columns, and for parts what they belong to."""

    name: str
    model: type[models.Model]
    columns: tuple[Column, ...]
    # Of parts: the name by which the record knows them, and they the record.
    related: str = ""
    link: str = ""

    @property
    def title(self) -> str:
        return str(self.model._meta.verbose_name_plural)

    @property
    def by_name(self) -> dict[str, Column]:
        return {column.name: column for column in self.columns}

    @property
    def headers(self) -> list[str]:
        return [column.header for column in self.columns]

    def without_people(self) -> Table:
        """The table for a reader who is told nobody's e-mail."""
        return replace(self, columns=tuple(c for c in self.columns if c.to is not User))

    def without(self, names: Set[str]) -> Table:
        """The table without these columns."""
        left = (column for column in self.columns if column.name not in names)
        return replace(self, columns=tuple(left))

    def tell(self, rows: Iterable[models.Model]) -> Iterator[list[Plain]]:
        for row in rows:
            yield [column.tell(row) for column in self.columns]


def tables_of(noun: Noun) -> tuple[Table, ...]:
    """A noun's own table, then one for each of its parts."""
    main = Table(noun.slug, noun.model, tuple(columns_of(noun.model)))
    parts = [part_of(noun.slug, noun.model, name) for name in noun.model.PARTS]
    return (main, *parts)


def part_of(above: str, model: type[models.Model], related: str) -> Table:
    """The table of rows that belong to another table's, the link to those first."""
    relation: Any = model._meta.get_field(related)
    link = relation.remote_field
    columns = columns_of(relation.related_model)
    columns.sort(key=lambda column: column.field is not link)
    name = f"{above}-{related.replace('_', '-')}"
    return Table(name, relation.related_model, tuple(columns), related, link.name)


def rows_of(table: Table, records: Any) -> Iterator[models.Model]:
    """The rows of a table that tell of these records, in the records' order."""
    if not table.link:
        rows = records.select_related(*near(table.model))
        yield from rows.iterator(chunk_size=ROWS_A_FETCH)
        return
    place = {pk: at for at, pk in enumerate(records.values_list("pk", flat=True))}
    found = table.model._default_manager.filter(
        **{f"{table.link}__in": records.order_by().values("pk")}
    )
    rows = found.select_related(*near(table.model)).order_by("pk")
    at = f"{table.link}_id"
    yield from sorted(rows, key=lambda row: place.get(getattr(row, at), 0))


def near(model: type[models.Model]) -> list[str]:
    """What rows need beside them to tell names and keys without more queries."""
    found = []
    for field in model._meta.concrete_fields:
        if field.is_relation and field.name != "farm":
            to: Any = field.related_model
            found.append(field.name)
            found += [
                f"{field.name}__{beyond.name}"
                for beyond in to._meta.concrete_fields
                if beyond.is_relation and beyond.name in {"field", "kind", "lot"}
            ]
    return found
