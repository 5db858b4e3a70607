"""Narrowing a list: by field, kind, season, days and words."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator, Mapping
from typing import Any

import django_filters as df
from django import forms
from django.db.models import Q, QuerySet
from django.utils.translation import gettext_lazy as _

from farm.forms.base import DateInput, offered
from farm.forms.long import LongSelect
from farm.models import Farm, Field, User
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
    person = df.ModelChoiceFilter(
        label=_("Person"), method="by_person", queryset=User.objects.all()
    )
    sort = df.ChoiceFilter(
        label=_("In the order of"), method="as_they_are", empty_label=_("as usual")
    )
    struck = df.BooleanFilter(
        label=_("Also voided ones"),
        method="as_they_are",
        widget=forms.CheckboxInput(),
    )

    def __init__(
        self,
        data: Any = None,
        *,
        farm: Farm,
        queryset: Any,
        sorts: Mapping[str, str] | None = None,
    ) -> None:
        super().__init__(data, queryset)
        self.farm = farm
        self.filters["sort"].extra["choices"] = list(_ways(sorts or {}))
        if not self.DAY:
            for name in ("first", "last", "season"):
                self.filters.pop(name, None)
        for name in ("person", "sort", "struck"):
            self.filters[name] = self.filters.pop(name)
        for part in self.filters.values():
            # Asked for anew whenever the choice is shown, so it is set there too.
            if getattr(part, "queryset", None) is not None:
                part.queryset = _choice(part.queryset, farm)

    @property
    def is_narrowed(self) -> bool:
        """Whether anything is asked for but another order."""
        return any(self.data.get(name) for name in self.form.fields if name != "sort")

    def filter_queryset(self, queryset: QuerySet[Any]) -> QuerySet[Any]:
        if not self.form.cleaned_data.get("struck"):
            queryset = queryset.filter(voided_at=None)
        narrowed: QuerySet[Any] = super().filter_queryset(queryset)
        return narrowed

    def as_they_are(self, rows: Any, name: str, value: Any) -> Any:
        return rows

    def by_person(self, rows: Any, name: str, value: User) -> Any:
        """What they wrote down, and what others wrote down as done by them."""
        is_theirs = Q(written_by=value)
        if value.name:
            is_theirs |= Q(done_by__iexact=value.name)
        return rows.filter(is_theirs)

    def with_words(self, rows: Any, name: str, value: str) -> Any:
        found = Q(done_by__icontains=value)
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


def _choice(rows: Any, farm: Farm) -> Any:
    if rows.model is User:
        known = farm.memberships.values("user")
        return rows.filter(pk__in=known).order_by("name", "email")
    return offered(rows, farm)


def _ways(sorts: Mapping[str, str]) -> Iterator[tuple[str, str]]:
    """Each column both ways."""
    for path, label in sorts.items():
        what = label[:1].upper() + label[1:]
        yield path, _("%(what)s, first to last") % {"what": what}
        yield f"-{path}", _("%(what)s, last to first") % {"what": what}


def by_field(path: str) -> df.ModelChoiceFilter:
    rows = Field.objects.order_by("name")
    return df.ModelChoiceFilter(
        label=_("Field"), field_name=path, queryset=rows, widget=LongSelect
    )


def by_kind(path: str) -> df.ModelChoiceFilter:
    rows = Kind.objects.all()
    return df.ModelChoiceFilter(
        label=_("Kind"), field_name=path, queryset=rows, distinct=True
    )
