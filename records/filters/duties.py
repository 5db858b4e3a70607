"""Narrowing the list of duties: by field, what, whom for, and whether settled."""

from __future__ import annotations

from typing import Any

import django_filters as df
from django.utils.translation import gettext_lazy as _

from farm.models import User
from records.filters.base import RecordFilter, by_field, by_kind
from records.models import Duty

OPEN, SETTLED = "open", "settled"


class DutyFilter(RecordFilter):
    DAY = "latest_on"
    WORDS = ("words", "notes", "field__name", "who_for__name")
    field = by_field("field")
    kind = by_kind("planting__lines__kind")
    what = df.ChoiceFilter(label=_("What"), choices=Duty.What.choices)
    stands = df.ChoiceFilter(
        label=_("Open or settled"),
        method="by_standing",
        choices=((OPEN, _("open")), (SETTLED, _("settled"))),
    )

    def by_person(self, rows: Any, name: str, value: User) -> Any:
        return super().by_person(rows, name, value) | rows.filter(who_for=value)

    def by_standing(self, rows: Any, name: str, value: str) -> Any:
        still = Duty.objects.open().values("pk")
        if value == OPEN:
            return rows.filter(pk__in=still)
        return rows.exclude(pk__in=still)
