"""Seed lots, searches for organic seed, and figures of the farm’s own."""

from __future__ import annotations

from django.utils.functional import Promise
from django.utils.translation import gettext_lazy as _

from farm.access import MANAGERS
from records import filters, forms, models
from records.figures import called, unit_called
from records.nouns.base import Column, Noun
from records.searching import was_complete, with_least


def kinds_in(row: models.SeedLot | models.SeedOffer) -> str:
    """The kind, or every kind of a mix."""
    return " + ".join(str(kind) for kind, _pls in row.contents())


def completeness(row: models.SeedSearch) -> str | Promise:
    """Whether a search is complete by the farm’s own minimum, in a word."""
    return _("complete") if was_complete(row) else _("not complete")


def ordered_kg(order: models.SeedOrder) -> float:
    return sum(line.seed_kg for line in order.lines.all())


NOUNS = (
    Noun(
        "seed-lots",
        models.SeedLot,
        forms.SeedLotForm,
        filters.SeedLotFilter,
        (
            Column(_("kind"), kinds_in, by="kind__name"),
            Column(_("variety"), "variety"),
            Column(_("lot number"), "lot_number"),
            Column(_("supplier"), "supplier"),
            Column(_("received on"), "received_on"),
            Column(_("weight received"), "received_kg", "mass"),
            Column(_("left"), "left_kg", "mass"),
            Column(_("pure live seed"), lambda row: row.pls_share, "percent"),
            Column(_("status"), "status"),
        ),
        order=("-received_on", "pk"),
        related=("kind",),
        prefetch=("components__kind",),
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
            Column(_("kind"), "kind", by="kind__name"),
            Column(_("traits wanted"), "traits"),
            Column(_("searched on"), "searched_on"),
            Column(_("sources asked"), lambda row: len(row.asked.all()), "number"),
            Column(_("why none was organic"), "reason"),
            Column(_("for seed lot"), "lot", by="lot__lot_number"),
            Column(_("by the farm’s minimum"), completeness),
        ),
        order=("-searched_on", "pk"),
        related=("kind", "lot__kind"),
        prefetch=("asked",),
        reckoned=with_least,
        writers=MANAGERS,
    ),
    Noun(
        "lot-moves",
        models.LotMove,
        forms.LotMoveForm,
        filters.LotMoveFilter,
        (
            Column(_("seed lot"), "lot", by="lot__lot_number"),
            Column(_("what became of it"), "what"),
            Column(_("on"), "moved_on"),
            Column(_("weight"), "mass_kg", "mass"),
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
            Column(_("kind"), kinds_in, by="kind__name"),
            Column(_("variety"), "variety"),
            Column(_("supplier"), "supplier", by="supplier__name"),
            Column(_("status"), "status"),
            Column(_("pure live seed"), lambda row: row.pls_share, "percent"),
            Column(_("day of the price list"), "offered_on"),
            Column(_("prices"), lambda row: len(row.prices.all()), "number"),
        ),
        order=("-offered_on", "kind__name", "pk"),
        related=("kind", "supplier"),
        prefetch=("prices", "components__kind"),
        writers=MANAGERS,
    ),
    Noun(
        "seed-orders",
        models.SeedOrder,
        forms.SeedOrderForm,
        filters.SeedOrderFilter,
        (
            Column(_("supplier"), "supplier", by="supplier__name"),
            Column(_("drawn up on"), "drawn_up_on"),
            Column(_("sent on"), "sent_on"),
            Column(_("order number"), "reference"),
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
            Column(_("kind of seed"), "kind", by="kind__name"),
            Column(_("inoculant or treatment"), "product", by="product__name"),
            Column(_("dose on the label"), "dose_share", "dose"),
            Column(_("good until the month"), "good_until"),
            Column(
                _("approved by"),
                lambda row: row.product.approval,
                by="product__approval",
            ),
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
            Column(_("kind"), "kind", by="kind__name"),
            Column(_("figure"), lambda row: called(row.attribute), by="attribute"),
            Column(_("stage"), "stage"),
            Column(_("from"), "low", "number"),
            Column(_("to"), "high", "number"),
            Column(_("unit"), lambda row: unit_called(row.unit)),
            Column(_("how you know"), "reason"),
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
            Column(_("assumption"), "called", by="key"),
            Column(_("value"), lambda row: f"{row.value:g} {unit_called(row.unit)}"),
            Column(_("how you know"), "reason"),
        ),
        order=("key", "pk"),
        writers=MANAGERS,
        begins_at="reports:assumptions",
        begins_with="key",
    ),
)
