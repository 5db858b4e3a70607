"""What left the field, where it lies and to whom it went."""

from __future__ import annotations

from django.utils.translation import gettext_lazy as _

from records import filters, forms, models
from records.nouns.base import Column, Noun

MASS = Column(_("weight"), lambda row: row.mass_kg, "mass")


NOUNS = (
    Noun(
        "harvest-lots",
        models.HarvestLot,
        forms.HarvestLotForm,
        filters.HarvestLotFilter,
        (
            Column(_("lot code"), lambda row: row.code),
            Column(_("what was harvested"), lambda row: row.crop),
            Column(_("field"), lambda row: row.field),
            Column(_("harvested on"), lambda row: row.harvested_on),
            MASS,
            Column(_("for"), lambda row: row.get_use_display()),
            Column(_("status"), lambda row: row.get_status_display()),
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
            Column(_("harvest lot"), lambda row: row.lot),
            Column(_("place"), lambda row: row.place),
            Column(_("stored on"), lambda row: row.stored_on),
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
            Column(_("harvest lot"), lambda row: row.lot),
            Column(_("buyer, or use"), lambda row: row.buyer),
            Column(_("sold or used on"), lambda row: row.sold_on),
            MASS,
            Column(_("status on the papers"), lambda row: row.get_status_display()),
            Column(_("invoice"), lambda row: row.invoice),
        ),
        order=("-sold_on", "pk"),
        related=("lot",),
    ),
)
