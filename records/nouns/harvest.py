"""What left the field, where it lies and to whom it went."""

from __future__ import annotations

from django.utils.translation import gettext_lazy as _

from records import filters, forms, models
from records.nouns.base import Column, Noun

MASS = Column(_("weight"), "mass_kg", "mass")


NOUNS = (
    Noun(
        "harvest-lots",
        models.HarvestLot,
        forms.HarvestLotForm,
        filters.HarvestLotFilter,
        (
            Column(_("lot code"), "code"),
            Column(_("what was harvested"), "crop"),
            Column(_("field"), "field", by="field__name"),
            Column(_("harvested on"), "harvested_on"),
            MASS,
            Column(_("for"), "use"),
            Column(_("status"), "status"),
        ),
        order=("-harvested_on", "pk"),
        related=("field",),
        cautions=("harvest", "machinery"),
    ),
    Noun(
        "storages",
        models.Storage,
        forms.StorageForm,
        filters.StorageFilter,
        (
            Column(_("harvest lot"), "lot", by="lot__code"),
            Column(_("place"), "place"),
            Column(_("stored on"), "stored_on"),
            MASS,
        ),
        order=("-stored_on", "pk"),
        related=("lot",),
    ),
    Noun(
        "sales",
        models.Sale,
        forms.SaleForm,
        filters.SaleFilter,
        (
            Column(_("harvest lot"), "lot", by="lot__code"),
            Column(_("buyer, or use"), "buyer"),
            Column(_("sold or used on"), "sold_on"),
            MASS,
            Column(_("status on the papers"), "status"),
            Column(_("invoice"), "invoice"),
        ),
        order=("-sold_on", "pk"),
        related=("lot",),
    ),
)
