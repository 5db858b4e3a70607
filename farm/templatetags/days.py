"""Days in the order and with the small words of each language."""

from __future__ import annotations

from typing import Any

from django import template
from django.template.defaultfilters import date as plain_date
from django.utils.formats import date_format
from django.utils.translation import get_language

register = template.Library()

# How a day is written in Spanish where English says it like this.
SPANISH = {
    "j F Y": r"j \d\e F \d\e Y",
    "j F Y, H:i": r"j \d\e F \d\e Y, H:i",
    "j F": r"j \d\e F",
    "F Y": r"F \d\e Y",
    "M Y": "b Y",
    "M": "b",
    "j M": "j b",
    "j M Y": "j b Y",
    "j M Y H:i": "j b Y H:i",
    "j M Y, H:i": "j b Y, H:i",
    "D j M": "D j b",
    "D j M, H:i": "D j b, H:i",
    "l, j F Y": r"l, j \d\e F \d\e Y",
    "l, j F": r"l, j \d\e F",
    "l j F": r"l, j \d\e F",
}


def said(form: str) -> str:
    """The form of a day in the language of the page."""
    spanish = (get_language() or "").startswith("es")
    return SPANISH.get(form, form) if spanish else form


@register.filter(name="date", expects_localtime=True, is_safe=False)
def date(value: Any, form: str | None = None) -> Any:
    """Django's own filter, for every page, in the language of the page."""
    return plain_date(value, said(form) if form else form)


def day_said(value: Any, form: str) -> str:
    """A day within a sentence."""
    return date_format(value, said(form))
