"""Money to the cent, with the code of the farm's own money beside it (ISO 4217)."""

from __future__ import annotations

from typing import Protocol

from django import template
from django.utils.html import format_html
from django.utils.safestring import SafeString
from django.utils.translation import gettext as _

from farm import units
from farm.templatetags.measures import FIXED_SPACE, unknown
from farm.units import System

register = template.Library()


class HasMoney(Protocol):
    """Whatever knows what money it reckons in: a farm."""

    currency: str
    units: str


@register.filter
def money(value: float | None, farm: HasMoney) -> SafeString:
    if value is None:
        return unknown()
    return format_html("{}{}{}", f"{value:,.2f}", FIXED_SPACE, farm.currency)


@register.filter
def money_by_weight(value: float | None, farm: HasMoney) -> SafeString:
    """Kept for a kilogram, shown for the weight the farm reads."""
    if value is None:
        return unknown()
    is_us = System(farm.units) is System.US
    each = value * units.KG_PER_LB if is_us else value
    unit = _("a pound") if is_us else _("a kilogram")
    parts = (f"{each:,.4g}", FIXED_SPACE, farm.currency, FIXED_SPACE, unit)
    return format_html("{}{}{}{}{}", *parts)
