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
            Column(_("name"), "name"),
            Column(_("maker or source"), "maker"),
            Column(_("type"), "type"),
            Column(_("approved by, reference"), "approval"),
            Column(_("approval runs out on"), "approved_until"),
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
            Column(_("product"), "product", by="product__name"),
            Column(_("lot number"), "lot_number"),
            Column(_("supplier"), "supplier"),
            Column(_("received on"), "received_on"),
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
            Column(_("product"), "product", by="product__name"),
            Column(_("field"), "field", by="field__name"),
            Column(_("applied on"), "applied_on"),
            Column(_("amount"), lambda row: row, "amount"),
            AREA,
            Column(_("worked in on"), "worked_in_on"),
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
            Column(_("batch"), "name"),
            Column(_("method"), "method"),
            Column(_("started on"), "started_on"),
            Column(_("finished on"), "finished_on"),
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
            Column(_("field"), "field", by="field__name"),
            Column(_("animals"), "animals"),
            Column(_("how many"), "head", "number"),
            Column(_("in on"), "in_on"),
            Column(_("out on"), "out_on"),
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
            Column(_("field"), "field", by="field__name"),
            Column(_("watered on"), "watered_on"),
            Column(_("water"), "water_mm", "rain"),
            Column(_("source of the water"), "source"),
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
            Column(_("field"), "field", by="field__name"),
            Column(_("sampled on"), "sampled_on"),
            Column(_("laboratory"), "laboratory"),
            Column(_("values"), lambda row: len(row.readings.all()), "number"),
        ),
        order=("-sampled_on", "pk"),
        related=("field",),
        prefetch=("readings",),
    ),
)
