"""SI values in the units a farm reads."""

from __future__ import annotations

from collections.abc import Callable
from typing import Protocol

from django import template
from django.utils.html import format_html
from django.utils.safestring import SafeString, mark_safe
from django.utils.translation import gettext as _
from django.utils.translation import ngettext

from farm import units
from farm.unit_words import unit_said
from farm.units import System, Written

register = template.Library()

# A number and its unit are never parted by the end of a line.
FIXED_SPACE = "\N{NO-BREAK SPACE}"


class HasUnits(Protocol):
    """Whatever knows the units it is to be shown in: a farm."""

    units: str


class HasEnds(Protocol):
    """A range with two ends."""

    @property
    def low(self) -> float: ...

    @property
    def high(self) -> float: ...


def _percent(share: float, system: System) -> Written:
    return Written(_short(share * 100, 0 if share * 100 >= 10 else 1), "%")


def _days(days: float, system: System) -> Written:
    word = ngettext("day", "days", 1 if days == 1 else 2)
    return Written(_short(days, 1), word)


def _nitrogen(rate_kg_m2: float, system: System) -> Written:
    """Whole pounds or kilograms: the rule behind it is no finer."""
    factor, unit = {
        System.US: (units.KG_M2_PER_LB_AC, "lb/ac"),
        System.METRIC: (units.KG_M2_PER_KG_HA, "kg/ha"),
    }[system]
    return Written(f"{rate_kg_m2 / factor:.0f}", unit)


def _short(number: float, places: int) -> str:
    text = f"{number:.{places}f}"
    return text.rstrip("0").rstrip(".") if "." in text else text


WRITERS: dict[str, Callable[[float, System], Written]] = {
    "area": units.write_area,
    "mass": units.write_mass,
    "rate": units.write_rate,
    "density": units.write_density,
    "length": units.write_length,
    "depth": units.write_depth,
    "temp": units.write_temp,
    "rain": units.write_rain,
    "volume": units.write_volume,
    "nitrogen": _nitrogen,
    "percent": _percent,
    "days": _days,
}


def unknown() -> SafeString:
    """A dash to the eye, a word to the ear."""
    return format_html(
        '<span class="dash" aria-hidden="true">—</span><span class="unseen">{}</span>',
        _("not known"),
    )


def written(value: float | None, measure: str, farm: HasUnits | str) -> SafeString:
    if value is None:
        return unknown()
    text = _written(value, measure, farm)
    return format_html("{}{}{}", text.number, FIXED_SPACE, text.unit)


def _written(value: float, measure: str, farm: HasUnits | str) -> Written:
    text = WRITERS[measure](float(value), _system(farm))
    return Written(text.number, unit_said(text.unit))


def _system(farm: HasUnits | str) -> System:
    return System(farm if isinstance(farm, str) else farm.units)


@register.filter
def area(value: float | None, farm: HasUnits) -> SafeString:
    return written(value, "area", farm)


@register.filter
def mass(value: float | None, farm: HasUnits) -> SafeString:
    return written(value, "mass", farm)


@register.filter
def rate(value: float | None, farm: HasUnits) -> SafeString:
    return written(value, "rate", farm)


@register.filter
def density(value: float | None, farm: HasUnits) -> SafeString:
    return written(value, "density", farm)


@register.filter
def distance(value: float | None, farm: HasUnits) -> SafeString:
    """A length; Django's own filter of that name counts."""
    return written(value, "length", farm)


@register.filter
def depth(value: float | None, farm: HasUnits) -> SafeString:
    return written(value, "depth", farm)


@register.filter
def temp(value: float | None, farm: HasUnits) -> SafeString:
    return written(value, "temp", farm)


@register.filter
def rain(value: float | None, farm: HasUnits) -> SafeString:
    return written(value, "rain", farm)


@register.simple_tag
def amount(value: float | None, measure: str, farm: HasUnits | str) -> SafeString:
    """A value whose measure is named beside it."""
    return written(value, measure, farm)


@register.filter
def percent(share: float | None) -> SafeString:
    return written(share, "percent", System.METRIC)


@register.filter
def day_count(days: float | None) -> SafeString:
    """Days to a tenth, with the word."""
    return written(days, "days", System.METRIC)


@register.filter
def bare(number: object) -> str:
    """A bare number without what says nothing: 8 and 0.05, not 8.0."""
    if isinstance(number, float):
        return _short(number, 4)
    return "" if number is None else str(number)


@register.filter
def tenth(number: float | None) -> SafeString:
    """A number to a tenth, where the unit stands elsewhere."""
    return unknown() if number is None else mark_safe(f"{number:.1f}")


@register.simple_tag
def between(ends: HasEnds | None, measure: str, farm: HasUnits | str) -> SafeString:
    """Both ends of a range where they differ, in one unit where they share it."""
    if ends is None:
        return unknown()
    return format_html('<span class="whole">{}</span>', _both(ends, measure, farm))


def _both(ends: HasEnds, measure: str, farm: HasUnits | str) -> str:
    low, high = (_written(end, measure, farm) for end in (ends.low, ends.high))
    if low == high:
        return f"{low.number}{FIXED_SPACE}{low.unit}"
    # Two minus signs around a dash cannot be read.
    dash = "–" if ends.low >= 0 else f" {_('to')} "
    same = low.unit == high.unit or low.number == "0"
    first = low.number if same else f"{low.number}{FIXED_SPACE}{low.unit}"
    return f"{first}{dash}{high.number}{FIXED_SPACE}{high.unit}"


@register.simple_tag
def likely(
    value: float | None, ends: HasEnds | None, measure: str, farm: HasUnits | str
) -> SafeString:
    """The likely value, and its range where the range says more."""
    alone = written(value, measure, farm)
    span = "" if ends is None else _both(ends, measure, farm)
    if span in {"", alone}:
        return alone
    return format_html('{} <span class="range whole">({})</span>', alone, span)
