"""How a list is saved as a table."""

from __future__ import annotations

from typing import Any

from django import template

from farm.access import MANAGERS, may
from records.tables import tables_of

register = template.Library()


@register.inclusion_tag("records/_tables.html", takes_context=True)
def save_as(context: Any) -> dict[str, Any]:
    """Links that save the list as it is narrowed, each of its tables by itself."""
    request, noun = context["request"], context["noun"]
    asked = request.GET.copy()
    asked.pop("page", None)
    return {
        "farm": context["farm"],
        "noun": noun,
        "query": asked.urlencode(),
        "parts": [table for table in tables_of(noun) if table.related],
        "may_load": may(request, MANAGERS),
    }
