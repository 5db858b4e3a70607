"""Narrowing lists of seed, inputs and what left the field."""

from __future__ import annotations

import django_filters as df
from django.utils.translation import gettext_lazy as _

from farm.forms.long import LongSelect
from records.filters.base import RecordFilter, by_field, by_kind
from records.models import (
    CompostBatch,
    HarvestLot,
    InputProduct,
    LotMove,
    SeedLot,
    Supplier,
)


def by_supplier(path: str) -> df.ModelChoiceFilter:
    rows = Supplier.objects.order_by("name")
    return df.ModelChoiceFilter(
        label=_("Supplier"), field_name=path, queryset=rows, widget=LongSelect
    )


class SeedLotFilter(RecordFilter):
    DAY = "received_on"
    WORDS = ("lot_number", "variety", "supplier", "notes")
    kind = by_kind("kind")
    status = df.ChoiceFilter(label=_("Status"), choices=SeedLot.Status.choices)


class SeedSearchFilter(RecordFilter):
    DAY = "searched_on"
    WORDS = ("traits", "asked__source", "notes")
    kind = by_kind("kind")


class LotMoveFilter(RecordFilter):
    DAY = "moved_on"
    WORDS = ("lot__lot_number", "notes")
    kind = by_kind("lot__kind")
    what = df.ChoiceFilter(label=_("What became of it"), choices=LotMove.What.choices)


class SeedDressingFilter(RecordFilter):
    WORDS = ("product__name", "product_lot", "notes")
    kind = by_kind("kind")


class SeedOfferFilter(RecordFilter):
    DAY = "offered_on"
    WORDS = ("variety", "supplier__name", "notes")
    kind = by_kind("kind")
    supplier = by_supplier("supplier")
    status = df.ChoiceFilter(label=_("Status"), choices=SeedLot.Status.choices)


class SeedOrderFilter(RecordFilter):
    DAY = "drawn_up_on"
    WORDS = ("supplier__name", "reference", "notes")
    kind = by_kind("lines__kind")
    supplier = by_supplier("supplier")


class FarmFigureFilter(RecordFilter):
    WORDS = ("attribute", "reason", "notes")
    kind = by_kind("kind")


class OwnAssumptionFilter(RecordFilter):
    WORDS = ("key", "reason", "notes")


class InputProductFilter(RecordFilter):
    WORDS = ("name", "maker", "approval", "notes")
    type = df.ChoiceFilter(label=_("Type"), choices=InputProduct.Type.choices)


class InputLotFilter(RecordFilter):
    DAY = "received_on"
    WORDS = ("lot_number", "supplier", "product__name", "invoice", "notes")
    product = df.ModelChoiceFilter(
        label=_("Product"),
        queryset=InputProduct.objects.order_by("name"),
        widget=LongSelect,
    )


class ApplicationFilter(RecordFilter):
    DAY = "applied_on"
    WORDS = ("product__name", "field__name", "notes", "target")
    field = by_field("field")
    kind = by_kind("planting__lines__kind")
    product = df.ModelChoiceFilter(
        label=_("Product"),
        queryset=InputProduct.objects.order_by("name"),
        widget=LongSelect,
    )


class CompostBatchFilter(RecordFilter):
    DAY = "started_on"
    WORDS = ("name", "feedstocks", "notes")
    method = df.ChoiceFilter(label=_("Method"), choices=CompostBatch.Method.choices)


class GrazingFilter(RecordFilter):
    DAY = "in_on"
    WORDS = ("animals", "owner", "notes")
    field = by_field("field")
    kind = by_kind("planting__lines__kind")


class IrrigationFilter(RecordFilter):
    DAY = "watered_on"
    WORDS = ("source", "notes")
    field = by_field("field")


class SoilTestFilter(RecordFilter):
    DAY = "sampled_on"
    WORDS = ("laboratory", "number", "notes")
    field = by_field("field")


class HarvestLotFilter(RecordFilter):
    DAY = "harvested_on"
    WORDS = ("code", "crop", "notes")
    field = by_field("field")
    kind = by_kind("planting__lines__kind")
    use = df.ChoiceFilter(label=_("For"), choices=HarvestLot.Use.choices)


class StorageFilter(RecordFilter):
    DAY = "stored_on"
    WORDS = ("lot__code", "place", "notes")
    field = by_field("lot__field")
    kind = by_kind("lot__planting__lines__kind")


class SaleFilter(RecordFilter):
    DAY = "sold_on"
    WORDS = ("lot__code", "buyer", "invoice", "notes")
    field = by_field("lot__field")
    kind = by_kind("lot__planting__lines__kind")
    status = df.ChoiceFilter(label=_("Status"), choices=HarvestLot.Status.choices)
