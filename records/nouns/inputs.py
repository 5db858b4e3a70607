"""What is put on the land: products, compost, water, animals."""

from __future__ import annotations

from django.utils.translation import gettext_lazy as _

from farm.access import MANAGERS
from records import filters, forms, models
from records.nouns.base import AREA, Column, Noun

NOUNS = (
    Noun(
        "input-products",
        models.InputProduct,
        forms.InputProductForm,
        filters.InputProductFilter,
        (
            Column(_("name"), lambda row: row.name),
            Column(_("maker or source"), lambda row: row.maker),
            Column(_("type"), lambda row: row.get_type_display()),
            Column(_("approved by, reference"), lambda row: row.approval),
            Column(_("approval runs out on"), lambda row: row.approved_until or ""),
        ),
        order=("name", "pk"),
        writers=MANAGERS,
        cautions=("label",),
    ),
    Noun(
        "input-lots",
        models.InputLot,
        forms.InputLotForm,
        filters.InputLotFilter,
        (
            Column(_("product"), lambda row: row.product),
            Column(_("lot number"), lambda row: row.lot_number),
            Column(_("supplier"), lambda row: row.supplier),
            Column(_("received on"), lambda row: row.received_on),
            Column(_("amount"), lambda row: row, "amount"),
        ),
        order=("-received_on", "pk"),
        related=("product",),
    ),
    Noun(
        "applications",
        models.Application,
        forms.ApplicationForm,
        filters.ApplicationFilter,
        (
            Column(_("product"), lambda row: row.product),
            Column(_("field"), lambda row: row.field),
            Column(_("applied on"), lambda row: row.applied_on),
            Column(_("amount"), lambda row: row, "amount"),
            AREA,
            Column(_("worked in on"), lambda row: row.worked_in_on or ""),
        ),
        order=("-applied_on", "pk"),
        related=("product", "field"),
        cautions=("label", "manure"),
    ),
    Noun(
        "compost-batches",
        models.CompostBatch,
        forms.CompostBatchForm,
        filters.CompostBatchFilter,
        (
            Column(_("batch"), lambda row: row.name),
            Column(_("method"), lambda row: row.get_method_display()),
            Column(_("started on"), lambda row: row.started_on),
            Column(_("finished on"), lambda row: row.finished_on or ""),
            Column(_("days written down"), lambda row: len(row.days.all()), "number"),
        ),
        order=("-started_on", "pk"),
        prefetch=("days",),
        cautions=("compost",),
    ),
    Noun(
        "grazings",
        models.Grazing,
        forms.GrazingForm,
        filters.GrazingFilter,
        (
            Column(_("field"), lambda row: row.field),
            Column(_("animals"), lambda row: row.animals),
            Column(_("how many"), lambda row: row.head, "number"),
            Column(_("in on"), lambda row: row.in_on),
            Column(_("out on"), lambda row: row.out_on or ""),
        ),
        order=("-in_on", "pk"),
        related=("field",),
        cautions=("grazing", "manure"),
    ),
    Noun(
        "irrigations",
        models.Irrigation,
        forms.IrrigationForm,
        filters.IrrigationFilter,
        (
            Column(_("field"), lambda row: row.field),
            Column(_("watered on"), lambda row: row.watered_on),
            Column(_("water"), lambda row: row.water_mm, "rain"),
            Column(_("source of the water"), lambda row: row.source),
        ),
        order=("-watered_on", "pk"),
        related=("field",),
    ),
    Noun(
        "soil-tests",
        models.SoilTest,
        forms.SoilTestForm,
        filters.SoilTestFilter,
        (
            Column(_("field"), lambda row: row.field),
            Column(_("sampled on"), lambda row: row.sampled_on),
            Column(_("laboratory"), lambda row: row.laboratory),
            Column(_("values"), lambda row: len(row.readings.all()), "number"),
        ),
        order=("-sampled_on", "pk"),
        related=("field",),
        prefetch=("readings",),
    ),
)
