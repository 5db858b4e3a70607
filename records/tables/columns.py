"""The columns of a table, found by looking at its model."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from django.core.exceptions import FieldDoesNotExist
from django.db import models

from farm.models import Farm, Record
from records.tables.cells import Plain, Sort, tell

KEY = "record_key"
# The first of these that a model has and keeps unique is its key in a table.
KEY_FIELDS = ("client_key", "slug", "email")
VOIDED = "void_reason"
# Told for reading: what is loaded is written by whoever loads it.
AUTHORSHIP = ("written_by", "written_at", "voided_by", "voided_at")
LAST = ("done_by", "notes", *AUTHORSHIP, VOIDED)

SORTS: tuple[tuple[type[models.Field[Any, Any]], Sort], ...] = (
    (models.FileField, Sort.FILE),
    (models.BooleanField, Sort.YES),
    (models.IntegerField, Sort.WHOLE),
    (models.FloatField, Sort.NUMBER),
    (models.DateTimeField, Sort.MOMENT),
    (models.DateField, Sort.DAY),
    (models.TimeField, Sort.TIME),
    (models.JSONField, Sort.JSON),
    (models.UUIDField, Sort.KEY),
    (models.CharField, Sort.TEXT),
    (models.TextField, Sort.TEXT),
)

# The end of a field's name tells the unit it is kept in; the longest end wins.
UNITS = {
    "amount_si": "kg or m3",
    "latitude": "°",
    "longitude": "°",
    "share": "of 1",
    "_c": "°C",
    "_cells_ml": "1/mL",
    "_days": "d",
    "_hours": "h",
    "_kg": "kg",
    "_kg_m2": "kg/m2",
    "_m": "m",
    "_m2": "m2",
    "_m3": "m3",
    "_mm": "mm",
    "_per_m2": "1/m2",
    "_percent": "%",
}
HOW_WRITTEN = {Sort.DAY: "yyyy-mm-dd", Sort.TIME: "hh:mm"}


@dataclass(frozen=True)
class Column:
    """One column: its name, what its cells hold, and the field they come from."""

    name: str
    sort: Sort
    field: models.Field[Any, Any]
    unit: str = ""
    # The model whose record the cell names, where it names one.
    to: type[models.Model] | None = None
    # The name of that record, beside its key.
    is_name: bool = False
    is_told: bool = False

    @property
    def header(self) -> str:
        return f"{self.name} [{self.unit}]" if self.unit else self.name

    def tell(self, row: models.Model) -> Plain:
        value = getattr(row, self.field.name)
        if self.to is not None and value is not None:
            value = str(value) if self.is_name else key_of(value)
        return tell(value, self.sort)


def key_field(model: type[models.Model]) -> str | None:
    """The field by which rows of this model are told apart everywhere."""
    for name in KEY_FIELDS:
        try:
            field = model._meta.get_field(name)
        except FieldDoesNotExist:
            continue
        if getattr(field, "unique", False):
            return name
    return None


def key_of(row: models.Model) -> str:
    name = key_field(type(row))
    if name is None:
        raise LookupError(f"{row._meta.label} has no key that lasts")
    return str(getattr(row, name))


def columns_of(
    model: type[models.Model], *, without: tuple[str, ...] = ()
) -> list[Column]:
    """Every column of a model's table: its key first, its history last."""
    fields = [
        field
        for field in model._meta.concrete_fields
        if not field.primary_key
        and field.related_model is not Farm
        and field.name not in without
    ]
    # The fields of the abstract record come first in Django's order.
    fields.sort(key=lambda field: LAST.index(field.name) if field.name in LAST else -1)
    return [column for field in fields for column in _columns(field)]


def _columns(field: models.Field[Any, Any]) -> list[Column]:
    is_told = field.name in AUTHORSHIP
    if field.is_relation:
        to: Any = field.related_model
        key = Column(field.name, Sort.KEY, field, to=to, is_told=is_told)
        if key_field(to) == "email":
            return [key]
        name = f"{field.name}_name"
        return [key, Column(name, Sort.TEXT, field, "", to, is_name=True)]
    if field.name == "client_key":
        return [Column(KEY, Sort.KEY, field)]
    sort = sort_of(field)
    is_told = is_told or sort is Sort.FILE
    return [Column(field.name, sort, field, unit_of(field, sort), is_told=is_told)]


def sort_of(field: models.Field[Any, Any]) -> Sort:
    for kind, sort in SORTS:
        if isinstance(field, kind):
            return sort
    raise LookupError(f"{field} has no place in a table")


def unit_of(field: models.Field[Any, Any], sort: Sort) -> str:
    if sort not in {Sort.NUMBER, Sort.WHOLE}:
        return HOW_WRITTEN.get(sort, "")
    ends = [end for end in UNITS if field.name.endswith(end)]
    return UNITS[max(ends, key=len)] if ends else ""


def is_record(model: type[models.Model]) -> bool:
    return issubclass(model, Record)
