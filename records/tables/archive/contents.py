"""Which tables belong to a farm, found by following their links to it."""

from __future__ import annotations

import graphlib
from collections.abc import Iterable
from dataclasses import dataclass
from typing import Any

from django.apps import apps
from django.db import models

from farm.models import Farm, User
from records.nouns import BY_MODEL
from records.tables.cells import Sort
from records.tables.columns import Column, columns_of, is_record
from records.tables.layout import Table, near

Model = type[models.Model]
ID = "id"
# By this pair a row tells of any record there is.
POINTING = {"noun", "object_id"}
# Never carried away: what opens doors.
PEOPLE_KEEP = ("password", "last_login", "joined_at", "units")
SECRET = "token"


@dataclass(frozen=True)
class Kept:
    """One table of the archive, and the way from its rows to their farm."""

    table: Table
    way: str

    @property
    def member(self) -> str:
        return f"{self.table.name}.csv"

    def rows(self, farm: Farm) -> Any:
        found = self.table.model._default_manager.filter(**{self.way: farm})
        return found.select_related(*near(self.table.model)).order_by("pk")


def numbered(name: str, model: Model, *, without: tuple[str, ...] = ()) -> Table:
    """A table with the number of each row first, which the history is sealed with."""
    assert model._meta.pk is not None
    number = Column(ID, Sort.WHOLE, model._meta.pk)
    return Table(name, model, (number, *columns_of(model, without=without)))


def farm_table() -> Table:
    return numbered("farm", Farm)


def people_table() -> Table:
    return numbered("people", User, without=PEOPLE_KEEP)


def kept() -> list[Kept]:
    """Every table of a farm, those first that others name."""
    ways = {
        model: way
        for model in apps.get_models(include_auto_created=True)
        if (way := way_to_farm(model)) and not _is_secret(model)
    }
    return [
        Kept(numbered(_name(model), model), ways[model]) for model in in_order(ways)
    ]


def way_to_farm(model: Model, seen: tuple[Model, ...] = ()) -> str:
    """The path by which a row's farm is found; "" where there is none."""
    links = [field for field in _links(model) if field.related_model not in seen]
    for field in links:
        if field.related_model is Farm:
            return str(field.name)
    for field in sorted(links, key=_how_loose):
        beyond = way_to_farm(field.related_model, (*seen, model))
        if beyond:
            return f"{field.name}__{beyond}"
    return ""


def in_order(found: Iterable[Model]) -> list[Model]:
    """Models sorted so that each comes after those it names."""
    wanted = list(found)
    graph = {model: {*_named_by(model, wanted)} - {model} for model in wanted}
    return list(graphlib.TopologicalSorter(graph).static_order())


def points(model: Model) -> bool:
    return {field.name for field in model._meta.concrete_fields} >= POINTING


def by_word() -> dict[str, Model]:
    """Every model by the word under which rows point at it."""
    return {str(one._meta.model_name): one for one in apps.get_models()}


def _named_by(model: Model, wanted: list[Model]) -> Iterable[Model]:
    yield from (f.related_model for f in _links(model) if f.related_model in wanted)
    if points(model):
        # Papers point at records; the history points at papers as well.
        yield from (
            one
            for one in wanted
            if not points(one) or (is_record(one) and not is_record(model))
        )


def _links(model: Model) -> list[Any]:
    return [field for field in model._meta.concrete_fields if field.is_relation]


def _how_loose(field: Any) -> tuple[bool, bool]:
    return field.null, field.remote_field.on_delete is not models.CASCADE


def _is_secret(model: Model) -> bool:
    return any(SECRET in field.name for field in model._meta.concrete_fields)


def _name(model: Model) -> str:
    """What the table's file is called: as its list is, or after what it belongs to."""
    noun = BY_MODEL.get(str(model._meta.model_name))
    if noun is not None:
        return noun.slug
    links = sorted(_links(model), key=_how_loose)
    links.sort(key=lambda field: field.related_model is not Farm)
    link = next(
        field
        for field in links
        if field.related_model is Farm or way_to_farm(field.related_model)
    )
    related = link.remote_field.get_accessor_name().replace("_", "-")
    above = "" if link.related_model is Farm else f"{_name(link.related_model)}-"
    return f"{above}{related}"
