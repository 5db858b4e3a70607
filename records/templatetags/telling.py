"""What a list's column tells of a row, and an amount in the farm's units."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import Any

from django import template
from django.utils.translation import gettext as _

from farm import units
from farm.access import MANAGERS, may
from farm.models import Change, Farm, Record
from farm.units import System
from records import history
from records.figures import YES_NO, called, unit_called
from records.forms.by_weight import count_by_weight, dose
from records.lookovers import Review, reviews
from records.looks_said import look_said
from records.models import Application, FarmFigure, KindFigure
from records.nouns import Column, Noun

register = template.Library()
register.filter(dose)
register.filter(look_said)
register.filter(count_by_weight)


@register.filter
def of(column: Column, row: Any) -> Any:
    return column.tell(row)


@register.simple_tag(takes_context=True)
def headings(context: Any, noun: Noun) -> Iterator[tuple[Column, str, str]]:
    """Each column of a list with how it is sorted now, and how a press sorts it."""
    now = context["request"].GET.get("sort") or noun.order[0]
    for column in noun.columns:
        rises, falls = now == column.path, now == f"-{column.path}"
        way = ("ascending" if rises else "descending") if rises or falls else ""
        yield column, way if column.path else "", f"{'-' * rises}{column.path}"


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
    return called(str(word))


@register.filter
def printed(row: KindFigure | FarmFigure) -> str:
    """A figure or a range with its unit; a mere yes or no in words."""
    if row.unit == YES_NO:
        return _("yes") if row.low else _("no")
    ends = f"{row.low}" if row.high == row.low else f"{row.low}–{row.high}"
    return f"{ends} {unit_called(row.unit)}"


@register.filter
def note_plain(note: str) -> str:
    """A note of the catalogue in the language of the page."""
    return _(note) if note else ""


@register.filter
def unit_plain(unit: str) -> str:
    """A printed unit as it is spoken."""
    return unit_called(str(unit))


@register.filter
def named(table: dict[str, Any] | None, key: str) -> Any:
    """The entry of a table under that name, or nothing."""
    return (table or {}).get(key)


@register.filter
def has(chosen: set[str], number: int) -> bool:
    return str(number) in chosen


@register.filter
def told(changes: Iterable[Change], farm: Farm) -> list[history.Told]:
    """Changes as a reader reads them."""
    return history.told(changes, farm)


@register.simple_tag(takes_context=True)
def reviews_of(context: Any, rows: Iterable[Record]) -> dict[int, Review]:
    """The last review of each record of a list, by the record's number."""
    return reviews(context["farm"], rows)


@register.simple_tag(takes_context=True)
def review_of(context: Any, row: Record) -> dict[str, Any]:
    """The last review of a record, and whether this reader may add one."""
    last = reviews(context["farm"], [row]).get(row.pk)
    asked = row.voided_at is None and not (last and last.stands)
    return {"last": last, "may": asked and may(context["request"], MANAGERS)}
