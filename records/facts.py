"""The facts of a record, line by line, each measured as its field's name tells."""

from __future__ import annotations

from collections.abc import Iterator, Set
from dataclasses import dataclass
from typing import Any

from django.db import models as db
from django.utils.functional import Promise
from django.utils.translation import gettext as _

from farm.models import Farm, Record
from farm.writing import UNTOLD, VOIDING

# The end of a field's name tells how its value is measured.
MEASURES = {
    "tested_on": "month",
    "inoculant_until": "month",
    "good_until": "month",
    "dose_share": "dose",
    "count_per_kg": "count",
    "freight_by_weight": "money_by_weight",
    "freight": "money",
    "least_order": "money",
    "price": "money",
    "_per_m2": "number",
    "_kg_m2": "rate",
    "_m2": "area",
    "_kg": "mass",
    "_share": "percent",
    "share": "percent",
    "depth_m": "depth",
    "_m": "length",
    "_mm": "rain",
    "_c": "temp",
}


@dataclass(frozen=True)
class Fact:
    """One line of a record: what it is called, its value, how it is measured."""

    label: str | Promise
    value: Any
    measure: str = ""


def facts(row: Record, farm: Farm) -> list[Fact]:
    """Every line of a record that says something, in the order of its fields."""
    hidden = UNTOLD | VOIDING | (row.PRIVATE if farm.is_read_by_crew else set())
    return [*_own_facts(row, hidden), *_parts_facts(row)]


def _own_facts(row: Record, hidden: Set[str]) -> Iterator[Fact]:
    for field in row._meta.concrete_fields:
        name = field.name
        value = getattr(row, "called" if name == "key" else name)
        silent = value in (None, "") or name in hidden
        if silent or name in {"outline", "measure"}:
            continue
        if name == "amount_si":
            yield Fact(_("amount"), row, "amount")
        elif field.choices:
            yield Fact(field.verbose_name, getattr(row, f"get_{name}_display")())
        elif isinstance(field, db.BooleanField):
            yield Fact(field.verbose_name, value, "yes")
        else:
            yield Fact(field.verbose_name, value, measure_of(name))


def _parts_facts(row: Record) -> Iterator[Fact]:
    for name in row.PARTS:
        for place, part in enumerate(getattr(row, name).order_by("pk"), start=1):
            heading = f"{part._meta.verbose_name} {place}"
            for field in part._meta.concrete_fields:
                value = getattr(part, field.name)
                if field.name == "id" or value in (None, "") or value == row:
                    continue
                label = f"{heading}: {field.verbose_name}"
                yield Fact(label, value, measure_of(field.name))


def measure_of(name: str) -> str:
    return next((how for end, how in MEASURES.items() if name.endswith(end)), "")
