"""What a list's column tells of a row, and an amount in the farm's units."""

from __future__ import annotations

from typing import Any

from django import template

from farm import units
from farm.models import Farm
from farm.units import System
from records.models import Application
from records.nouns import Column

register = template.Library()


@register.filter
def of(column: Column, row: Any) -> Any:
    return column.told(row)


@register.filter
def amount(row: Application, farm: Farm) -> str:
    """By weight or by volume, as it was measured."""
    system = System(farm.units)
    if row.measure == Application.Measure.VOLUME:
        return str(units.write_volume(row.amount_si, system))
    return str(units.write_mass(row.amount_si, system))


@register.filter
def plain(word: str) -> str:
    """A name from the catalogue as it is spoken."""
    return str(word).replace("_", " ")


@register.filter
def named(table: dict[str, Any] | None, key: str) -> Any:
    """The entry of a table under that name, or nothing."""
    return (table or {}).get(key)


@register.filter
def has(chosen: set[str], number: int) -> bool:
    return str(number) in chosen
