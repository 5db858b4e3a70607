"""Seed lots, searches for organic seed, and figures of the farm’s own."""

from __future__ import annotations

from django.utils.translation import gettext_lazy as _

from farm.access import MANAGERS
from records import filters, forms, models
from records.figures import called, unit_called
from records.nouns.base import Column, Noun


def ordered_kg(order: models.SeedOrder) -> float:
    return sum(line.seed_kg for line in order.lines.all())


NOUNS = (
    Noun(
        "seed-lots",
        models.SeedLot,
        forms.SeedLotForm,
        filters.SeedLotFilter,
        (
            Column(_("kind"), lambda row: row.kind),
            Column(_("variety"), lambda row: row.variety),
            Column(_("lot number"), lambda row: row.lot_number),
            Column(_("supplier"), lambda row: row.supplier),
            Column(_("received on"), lambda row: row.received_on),
            Column(_("weight received"), lambda row: row.received_kg, "mass"),
            Column(_("left"), lambda row: row.left_kg, "mass"),
            Column(_("pure live seed"), lambda row: row.pls_share, "percent"),
            Column(_("status"), lambda row: row.get_status_display()),
        ),
        order=("-received_on", "pk"),
        related=("kind",),
        reckoned=lambda rows: rows.with_balance(),
        cautions=("treated_seed",),
        writers=MANAGERS,
    ),
    Noun(
        "seed-searches",
        models.SeedSearch,
        forms.SeedSearchForm,
        filters.SeedSearchFilter,
        (
            Column(_("kind"), lambda row: row.kind),
            Column(_("traits wanted"), lambda row: row.traits),
            Column(_("searched on"), lambda row: row.searched_on),
            Column(_("sources asked"), lambda row: len(row.asked.all()), "number"),
            Column(_("why none was organic"), lambda row: row.get_reason_display()),
            Column(_("for seed lot"), lambda row: row.lot or ""),
        ),
        order=("-searched_on", "pk"),
        related=("kind", "lot__kind"),
        prefetch=("asked",),
        writers=MANAGERS,
    ),
    Noun(
        "lot-moves",
        models.LotMove,
        forms.LotMoveForm,
        filters.LotMoveFilter,
        (
            Column(_("seed lot"), lambda row: row.lot),
            Column(_("what became of it"), lambda row: row.get_what_display()),
            Column(_("on"), lambda row: row.moved_on),
            Column(_("weight"), lambda row: row.mass_kg, "mass"),
        ),
        order=("-moved_on", "pk"),
        related=("lot__kind",),
    ),
    Noun(
        "seed-offers",
        models.SeedOffer,
        forms.SeedOfferForm,
        filters.SeedOfferFilter,
        (
            Column(_("kind"), lambda row: row.kind),
            Column(_("variety"), lambda row: row.variety),
            Column(_("supplier"), lambda row: row.supplier),
            Column(_("status"), lambda row: row.get_status_display()),
            Column(_("pure live seed"), lambda row: row.pls_share, "percent"),
            Column(_("day of the price list"), lambda row: row.offered_on),
            Column(_("prices"), lambda row: len(row.prices.all()), "number"),
        ),
        order=("-offered_on", "kind__name", "pk"),
        related=("kind", "supplier"),
        prefetch=("prices",),
        writers=MANAGERS,
    ),
    Noun(
        "seed-orders",
        models.SeedOrder,
        forms.SeedOrderForm,
        filters.SeedOrderFilter,
        (
            Column(_("supplier"), lambda row: row.supplier),
            Column(_("drawn up on"), lambda row: row.drawn_up_on),
            Column(_("sent on"), lambda row: row.sent_on or ""),
            Column(_("order number"), lambda row: row.reference),
            Column(_("lines"), lambda row: len(row.lines.all()), "number"),
            Column(_("weight"), ordered_kg, "mass"),
        ),
        order=("-drawn_up_on", "pk"),
        related=("supplier",),
        prefetch=("lines",),
        writers=MANAGERS,
    ),
    Noun(
        "seed-dressings",
        models.SeedDressing,
        forms.SeedDressingForm,
        filters.SeedDressingFilter,
        (
            Column(_("kind of seed"), lambda row: row.kind),
            Column(_("inoculant or treatment"), lambda row: row.product),
            Column(_("dose on the label"), lambda row: row.dose_share, "dose"),
            Column(_("good until the month"), lambda row: row.good_until or ""),
            Column(_("approved by"), lambda row: row.product.approval),
        ),
        order=("kind__name", "product__name", "pk"),
        related=("kind", "product"),
        cautions=("seed_dressing",),
        writers=MANAGERS,
    ),
    Noun(
        "own-figures",
        models.FarmFigure,
        forms.FarmFigureForm,
        filters.FarmFigureFilter,
        (
            Column(_("kind"), lambda row: row.kind),
            Column(_("figure"), lambda row: called(row.attribute)),
            Column(_("stage"), lambda row: row.stage),
            Column(_("from"), lambda row: row.low, "number"),
            Column(_("to"), lambda row: row.high, "number"),
            Column(_("unit"), lambda row: unit_called(row.unit)),
            Column(_("how you know"), lambda row: row.reason),
        ),
        order=("kind__name", "attribute", "pk"),
        related=("kind",),
        writers=MANAGERS,
        begins_at="records:kinds",
    ),
    Noun(
        "own-assumptions",
        models.OwnAssumption,
        forms.OwnAssumptionForm,
        filters.OwnAssumptionFilter,
        (
            Column(_("assumption"), lambda row: row.key.replace("_", " ")),
            Column(_("value"), lambda row: f"{row.value:g} {unit_called(row.unit)}"),
            Column(_("how you know"), lambda row: row.reason),
        ),
        order=("key", "pk"),
        writers=MANAGERS,
        begins_at="reports:assumptions",
        begins_with="key",
    ),
)
