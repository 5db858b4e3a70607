"""Narrowing lists of plantings and what was seen of them and done to them."""

from __future__ import annotations

import datetime as dt
from typing import Any

import django_filters as df
from django.db.models import Q
from django.utils.translation import gettext_lazy as _

from records.filters.base import RecordFilter, by_field, by_kind
from records.models import Observation, Planting, Termination


class PlantingFilter(RecordFilter):
    WORDS = ("notes", "next_crop", "field__name")
    DAY = "day"
    field = by_field("field")
    kind = by_kind("lines__kind")
    purpose = df.ChoiceFilter(label=_("Purpose"), choices=Planting.Purpose.choices)

    def since(self, rows: Any, name: str, value: dt.date) -> Any:
        return rows.filter(
            Q(sown_on__gte=value) | Q(sown_on=None, planned_on__gte=value)
        )

    def until(self, rows: Any, name: str, value: dt.date) -> Any:
        return rows.begun_by(value)

    def in_season(self, rows: Any, name: str, value: Any) -> Any:
        return rows.touching(*self.farm.season(int(value)))


class OfPlanting(RecordFilter):
    WORDS = ("notes", "planting__field__name")
    field = by_field("planting__field")
    kind = by_kind("planting__lines__kind")


class ObservationFilter(OfPlanting):
    DAY = "seen_on"
    seen = df.ChoiceFilter(label=_("What was seen"), choices=Observation.Seen.choices)


class BiomassSampleFilter(OfPlanting):
    DAY = "cut_on"


class TerminationFilter(OfPlanting):
    DAY = "ended_on"
    residue = df.ChoiceFilter(label=_("Residue"), choices=Termination.Residue.choices)
