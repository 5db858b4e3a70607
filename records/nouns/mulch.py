"""Films and tarps on the ground."""

from __future__ import annotations

from typing import Any

from django.utils.translation import gettext_lazy as _

from records import filters, forms, models
from records.nouns.base import AREA, Column, Noun


def off_or_not(row: models.MulchSheet) -> Any:
    return row.taken_off_on or _("still lies")


NOUNS = (
    Noun(
        "mulch-films-and-tarps",
        models.MulchSheet,
        forms.MulchSheetForm,
        filters.MulchSheetFilter,
        (
            Column(_("field"), "field", by="field__name"),
            Column(_("material"), "material"),
            AREA,
            Column(_("laid on"), "laid_on"),
            Column(_("taken off on"), off_or_not, by="taken_off_on"),
            Column(_("where it went"), "went"),
        ),
        order=("-laid_on", "pk"),
        related=("field",),
        cautions=("film", "machinery"),
    ),
)
