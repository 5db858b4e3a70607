"""Narrowing a list: by field, kind, season, days and words."""

from __future__ import annotations

import datetime as dt
from typing import Any

import django_filters as df
from django import forms
from django.db.models import Q, QuerySet
from django.utils.translation import gettext_lazy as _

from farm.forms.base import DateInput, offered
from farm.models import Farm, Field, LandStatement
from records.models import (
    Application,
    BiomassSample,
    FarmFigure,
    InputProduct,
    Kind,
    Observation,
    Planting,
    SeedLot,
    Termination,
    WeatherStation,
)


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
            rows = part.extra.get("queryset")
            if rows is not None:
                part.extra["queryset"] = offered(rows, farm)

    def filter_queryset(self, queryset: QuerySet[Any]) -> QuerySet[Any]:
        if not self.form.cleaned_data.get("struck"):
            queryset = queryset.filter(voided_at=None)
        return super().filter_queryset(queryset)

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


class FieldFilter(RecordFilter):
    WORDS = ("name", "notes")
    kind = df.ChoiceFilter(label=_("What it is"), choices=Field.Kind.choices)
    status = df.ChoiceFilter(label=_("Status"), choices=Field.Status.choices)

    class Meta:
        model = Field
        fields: list[str] = []


class LandStatementFilter(RecordFilter):
    DAY = "signed_on"
    WORDS = ("substance", "signer", "notes")
    field = by_field("field")

    class Meta:
        model = LandStatement
        fields: list[str] = []


class SeedLotFilter(RecordFilter):
    DAY = "received_on"
    WORDS = ("lot_number", "variety", "supplier", "notes")
    kind = by_kind("kind")
    status = df.ChoiceFilter(label=_("Status"), choices=SeedLot.Status.choices)

    class Meta:
        model = SeedLot
        fields: list[str] = []


class PlantingFilter(RecordFilter):
    WORDS = ("notes", "next_crop", "field__name", "done_by")
    DAY = "day"
    field = by_field("field")
    kind = by_kind("lines__kind")
    purpose = df.ChoiceFilter(label=_("Purpose"), choices=Planting.Purpose.choices)

    class Meta:
        model = Planting
        fields: list[str] = []

    def since(self, rows: Any, name: str, value: dt.date) -> Any:
        return rows.filter(
            Q(sown_on__gte=value) | Q(sown_on=None, planned_on__gte=value)
        )

    def until(self, rows: Any, name: str, value: dt.date) -> Any:
        return rows.begun_by(value)

    def in_season(self, rows: Any, name: str, value: Any) -> Any:
        return rows.touching(*self.farm.season(int(value)))


class OfPlanting(RecordFilter):
    WORDS = ("notes", "planting__field__name", "done_by")
    field = by_field("planting__field")
    kind = by_kind("planting__lines__kind")


class ObservationFilter(OfPlanting):
    DAY = "seen_on"
    seen = df.ChoiceFilter(label=_("What was seen"), choices=Observation.Seen.choices)

    class Meta:
        model = Observation
        fields: list[str] = []


class BiomassSampleFilter(OfPlanting):
    DAY = "cut_on"

    class Meta:
        model = BiomassSample
        fields: list[str] = []


class TerminationFilter(OfPlanting):
    DAY = "ended_on"
    residue = df.ChoiceFilter(label=_("Residue"), choices=Termination.Residue.choices)

    class Meta:
        model = Termination
        fields: list[str] = []


class InputProductFilter(RecordFilter):
    WORDS = ("name", "maker", "approval", "notes")
    type = df.ChoiceFilter(label=_("Type"), choices=InputProduct.Type.choices)

    class Meta:
        model = InputProduct
        fields: list[str] = []


class ApplicationFilter(RecordFilter):
    DAY = "applied_on"
    WORDS = ("product__name", "field__name", "notes", "done_by", "target")
    field = by_field("field")
    product = df.ModelChoiceFilter(
        label=_("Product"), queryset=InputProduct.objects.order_by("name")
    )

    class Meta:
        model = Application
        fields: list[str] = []


class StationFilter(RecordFilter):
    WORDS = ("name", "station_id", "source", "notes")

    class Meta:
        model = WeatherStation
        fields: list[str] = []


class FarmFigureFilter(RecordFilter):
    WORDS = ("attribute", "reason", "notes")
    kind = by_kind("kind")

    class Meta:
        model = FarmFigure
        fields: list[str] = []
