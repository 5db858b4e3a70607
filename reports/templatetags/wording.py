"""Words for members, keys and sources, as templates ask for them."""

from __future__ import annotations

from collections.abc import Iterable
from enum import StrEnum

from django import template
from django.utils.html import format_html
from django.utils.safestring import SafeString
from django.utils.translation import gettext as _

from farm.models import Field
from farm.templatetags.measures import FIXED_SPACE, HasUnits, unknown, written
from farm.units import System
from reports.calc.assumptions import BY_KEY
from reports.calc.shapes.ledger import Assumption
from reports.calc.shapes.rules import Param, RuleId, RuleSet
from reports.calc.sources import SOURCES, Tier
from reports.labels import ASSUMPTIONS, CAUTIONS, INPUTS, UNITS, label
from reports.labels.asked import ASKED
from reports.labels.records import WENT
from reports.labels.rules import DECIDES, place_said
from reports.ledger.rules_called import number_said

register = template.Library()
register.filter("label", label)
register.filter("place_said", place_said)

# Our choices that a grower reads in the farm's own units.
HEAT = "°C-day"
MEASURES = {"kg/m²": "density", "mm": "rain", "°C": "temp", "share": "percent"}


@register.simple_tag
def number(param: Param, value: float, farm: HasUnits) -> str:
    """A number of a rule, with its unit as the farm reads it."""
    return number_said(param.key, value, farm)


@register.filter
def labels(members: Iterable[StrEnum]) -> str:
    """The words for several members, with commas."""
    return ", ".join(dict.fromkeys(label(member) for member in members))


@register.filter
def caution(key: str) -> str:
    return str(CAUTIONS[key])


@register.filter
def asked(rule: RuleId) -> str:
    """What a rule asks, in our own words."""
    return str(ASKED[rule])


@register.filter
def decides(rules: RuleSet) -> str:
    """Who has the last word on a set of rules."""
    return str(DECIDES[rules])


@register.filter
def input_type(key: str) -> str:
    return str(INPUTS.get(key, key))


@register.filter
def sheet_went(key: str) -> str:
    """Where a film or tarp went when it came off."""
    return str(WENT.get(key, "—"))


@register.filter
def land_status(key: str) -> str:
    return str(Field.Status(key).label)


@register.filter
def assumption(key: str) -> str:
    return str(ASSUMPTIONS[key])


@register.filter
def basis(key: str) -> str:
    """Whether a choice was thought out or fitted."""
    return label(BY_KEY[key].basis)


@register.simple_tag
def assumed_value(row: Assumption, farm: HasUnits) -> SafeString:
    """The value in force, in the farm's units where it has such."""
    if row.unit == HEAT and farm.units == System.US:
        heat_f = f"{row.value * 9 / 5:.0f}"
        return format_html("{}{}{}", heat_f, FIXED_SPACE, _("°F-days"))
    if row.unit in MEASURES:
        return written(row.value, MEASURES[row.unit], farm)
    unit = UNITS[row.unit]
    return format_html("{}{}{}", f"{row.value:.4g}", FIXED_SPACE, unit)


@register.filter
def more_or_less(share: float | None) -> SafeString:
    """A share above or below what was meant, with its sign."""
    if share is None:
        return unknown()
    sign = "\N{MINUS SIGN}" if round(share, 2) < 0 else "+"
    return format_html("{}{}{}%", sign, f"{abs(share) * 100:.0f}", FIXED_SPACE)


@register.filter
def source(key: str) -> str:
    """Who and when, as one cites it in passing; common practice by its name."""
    if key == "OWN":
        return _("the farm’s own figure")
    entry = SOURCES.get(key)
    if entry is None:
        return key
    if entry.tier in {Tier.COMMON, Tier.ASSUMED, Tier.OURS, Tier.M}:
        return label(entry.tier)
    who = entry.authors or entry.title
    return f"{who} {entry.year}" if entry.year else who


@register.filter
def cited(key: str) -> SafeString:
    """The whole entry of the bibliography."""
    entry = SOURCES.get(key)
    if entry is None:
        return format_html("{}", key)
    if entry.tier in {Tier.COMMON, Tier.ASSUMED}:
        return format_html("{}", label(entry.tier))
    told = [entry.authors, entry.title, str(entry.year or ""), entry.place, entry.url]
    notes = [] if entry.read else [_("not read by us")]
    if entry.tier not in {Tier.A, Tier.OURS}:
        notes.append(label(entry.tier))
    text = ". ".join(part for part in told if part)
    return format_html("{}{}", text, f" ({'; '.join(notes)})" if notes else "")


@register.simple_tag
def days_between(likely: float | None, ends: tuple[float | None, ...]) -> SafeString:
    """Days with their range; an end that lies past the reckoning is said so."""
    if likely is None:
        return format_html("{}", _("more than the days reckoned"))
    low, high = ends
    span = f"{low}–{high}" if high is not None else _("%(low)s or more") % {"low": low}
    return format_html("{}{}{} ({})", likely, FIXED_SPACE, _("days"), span)
