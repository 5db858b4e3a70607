"""Money to the cent, without a sign: every price is in the farm's own money."""

from __future__ import annotations

from django import template
from django.utils.safestring import SafeString

from farm.templatetags.measures import unknown

register = template.Library()


@register.filter
def money(value: float | None) -> str | SafeString:
    return unknown() if value is None else f"{value:,.2f}"
