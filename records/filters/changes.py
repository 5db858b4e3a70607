"""Narrowing the farm's changes: who, what, when and by words."""

from __future__ import annotations

import datetime as dt
import json
import zoneinfo
from typing import Any

import django_filters as df
from django.apps import apps
from django.db.models import Q
from django.utils.translation import gettext_lazy as _

from farm.forms.base import OLDEST, DateInput
from farm.models import Change, Farm, Record, User

LATEST = dt.date(9000, 1, 1)


class ChangeFilter(df.FilterSet):
    words = df.CharFilter(label=_("Words"), method="with_words")
    by = df.ModelChoiceFilter(label=_("Who"), queryset=User.objects.order_by("name"))
    verb = df.ChoiceFilter(label=_("What was done"), choices=Change.Verb.choices)
    noun = df.ChoiceFilter(label=_("To what"), choices=lambda: nouns())
    first = df.DateFilter(label=_("From day"), method="since", widget=DateInput())
    last = df.DateFilter(label=_("To day"), method="until", widget=DateInput())

    def __init__(self, data: Any = None, *, farm: Farm, queryset: Any) -> None:
        super().__init__(data, queryset)
        self.farm = farm
        writers = User.objects.filter(pk__in=farm.changes.values("by"))
        self.filters["by"].queryset = writers.order_by("name", "email")

    def with_words(self, rows: Any, name: str, value: str) -> Any:
        # One database keeps letters beyond ASCII escaped, the other as they are.
        found = Q(label__icontains=value) | Q(reason__icontains=value)
        for text in {value, json.dumps(value)[1:-1]}:
            found |= Q(before__icontains=text) | Q(after__icontains=text)
        return rows.filter(found)

    def since(self, rows: Any, name: str, value: dt.date) -> Any:
        return rows.filter(at__gte=self._midnight(value))

    def until(self, rows: Any, name: str, value: dt.date) -> Any:
        after = min(value, LATEST) + dt.timedelta(days=1)
        return rows.filter(at__lt=self._midnight(after))

    def _midnight(self, day: dt.date) -> dt.datetime:
        """As the farm's own clock strikes it; days without a clock are moved."""
        day = min(max(day, OLDEST), LATEST)
        return dt.datetime.combine(
            day, dt.time(), zoneinfo.ZoneInfo(self.farm.time_zone)
        )


def nouns() -> list[tuple[str, str]]:
    """Every kind of record, by its name in the changes."""
    kinds = [model for model in apps.get_models() if issubclass(model, Record)]
    named = [(str(one._meta.model_name), str(one._meta.verbose_name)) for one in kinds]
    return sorted(named, key=lambda pair: pair[1])
