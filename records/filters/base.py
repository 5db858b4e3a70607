"""Narrowing a list: by field, kind, season, days and words."""

from __future__ import annotations

import datetime as dt
from typing import Any

import django_filters as df
from django import forms
from django.db.models import Q, QuerySet
from django.utils.translation import gettext_lazy as _

from farm.forms.base import DateInput, offered
from farm.models import Farm, Field
from records.models import Kind


class RecordFilter(df.FilterSet):
    """What every list can be narrowed by; each noun says where its words lie."""

    DAY = ""
    WORDS: tuple[str, ...] = ("notes",)

    words = df.CharFilter(label=_("Words"), method="with_words")
    first = df.DateFilter(label=_("From day"), method="since", widget=DateInput())
    last = df.DateFilter(label=_("To day"), method="until", widget=DateInput())
    season = df.NumberFilter(
        label=_("Season, year"),
        method="in_season",
        min_value=1900,
        max_value=2200,
        widget=forms.NumberInput(attrs={"inputmode": "numeric"}),
    )
    struck = df.BooleanFilter(
        label=_("Also voided ones"),
        method="with_struck",
        widget=forms.CheckboxInput(),
    )

    def __init__(self, data: Any = None, *, farm: Farm, queryset: Any) -> None:
        super().__init__(data, queryset)
        self.farm = farm
        if not self.DAY:
            for name in ("first", "last", "season"):
                self.filters.pop(name, None)
        for part in self.filters.values():
            # Asked for anew whenever the choice is shown, so it is set there too.
            if getattr(part, "queryset", None) is not None:
                part.queryset = offered(part.queryset, farm)

    def filter_queryset(self, queryset: QuerySet[Any]) -> QuerySet[Any]:
        if not self.form.cleaned_data.get("struck"):
            queryset = queryset.filter(voided_at=None)
        narrowed: QuerySet[Any] = super().filter_queryset(queryset)
        return narrowed

    def with_struck(self, rows: Any, name: str, value: bool) -> Any:
        return rows

    def with_words(self, rows: Any, name: str, value: str) -> Any:
        found = Q()
        for path in self.WORDS:
            found |= Q(**{f"{path}__icontains": value})
        return rows.filter(found)

    def since(self, rows: Any, name: str, value: dt.date) -> Any:
        return rows.filter(**{f"{self.DAY}__gte": value})

    def until(self, rows: Any, name: str, value: dt.date) -> Any:
        return rows.filter(**{f"{self.DAY}__lte": value})

    def in_season(self, rows: Any, name: str, value: Any) -> Any:
        first, last = self.farm.season(int(value))
        return rows.filter(**{f"{self.DAY}__range": (first, last)})


def by_field(path: str) -> df.ModelChoiceFilter:
    rows = Field.objects.order_by("name")
    return df.ModelChoiceFilter(label=_("Field"), field_name=path, queryset=rows)


def by_kind(path: str) -> df.ModelChoiceFilter:
    rows = Kind.objects.all()
    return df.ModelChoiceFilter(
        label=_("Kind"), field_name=path, queryset=rows, distinct=True
    )
