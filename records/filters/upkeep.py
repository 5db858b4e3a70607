"""Narrowing lists of what keeps the books straight."""

from __future__ import annotations

import django_filters as df
from django.utils.translation import gettext_lazy as _

from farm.forms.long import LongSelect
from records.filters.base import RecordFilter, by_field, by_kind
from records.models import Equipment, Incident, Supplier, Training


def by_machine(path: str) -> df.ModelChoiceFilter:
    rows = Equipment.objects.order_by("name")
    return df.ModelChoiceFilter(
        label=_("Machine or store"),
        field_name=path,
        queryset=rows,
        widget=LongSelect,
    )


class StationFilter(RecordFilter):
    WORDS = ("name", "station_id", "source", "notes")


class SupplierFilter(RecordFilter):
    WORDS = ("name", "certificate", "notes")
    part = df.ChoiceFilter(
        label=_("Supplier or contractor"), choices=Supplier.Part.choices
    )


class EquipmentFilter(RecordFilter):
    WORDS = ("name", "setting", "notes")
    part = df.ChoiceFilter(label=_("What it is"), choices=Equipment.Part.choices)


class CalibrationFilter(RecordFilter):
    DAY = "calibrated_on"
    WORDS = ("equipment__name", "setting", "notes")
    kind = by_kind("kind")
    equipment = by_machine("equipment")


class StockCountFilter(RecordFilter):
    DAY = "counted_on"
    WORDS = (
        "seed_lot__lot_number",
        "harvest_lot__code",
        "product__name",
        "notes",
    )
    kind = by_kind("seed_lot__kind")


class CleanOutFilter(RecordFilter):
    DAY = "cleaned_on"
    WORDS = ("equipment__name", "held_before", "method", "notes")
    equipment = by_machine("equipment")


class IncidentFilter(RecordFilter):
    DAY = "noticed_on"
    WORDS = ("account", "done_about_it", "told_to", "notes")
    field = by_field("field")
    what = df.ChoiceFilter(label=_("What it was"), choices=Incident.What.choices)


class TrainingFilter(RecordFilter):
    DAY = "trained_on"
    WORDS = ("person", "topic", "trainer", "notes")
    subject = df.ChoiceFilter(
        label=_("What it counts as"), choices=Training.Subject.choices
    )
