"""Seeds on the ground, by the square foot or the square metre."""

from __future__ import annotations

from django import template
from django.utils.html import format_html
from django.utils.safestring import SafeString
from django.utils.translation import gettext as _

from farm import units
from farm.templatetags.measures import FIXED_SPACE, HasUnits, unknown
from farm.units import System

register = template.Library()


@register.simple_tag
def seeds_on(seeds_m2: float | None, farm: HasUnits) -> SafeString:
    """Whole seeds, or a tenth where they are few."""
    if seeds_m2 is None:
        return unknown()
    is_us = System(farm.units) is System.US
    count = seeds_m2 * units.M2_PER_FT2 if is_us else seeds_m2
    text = f"{count:,.0f}" if count >= 10 else f"{count:.1f}"
    unit = _("to the sq ft") if is_us else _("to the m²")
    return format_html("{}{}{}", text, FIXED_SPACE, unit)


@register.filter
def live_share(share: float | None) -> SafeString:
    """Pure live seed to a tenth of a per cent, as a tag is held against an offer."""
    if share is None:
        return unknown()
    return format_html("{}{}%", f"{share * 100:.1f}", FIXED_SPACE)
