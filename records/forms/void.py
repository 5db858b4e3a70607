"""Striking a record out, with a reason."""

from __future__ import annotations

from typing import Any

from django import forms
from django.utils.translation import gettext_lazy as _

from farm.models import Field, Record
from records.models import (
    Equipment,
    HarvestLot,
    InputProduct,
    Planting,
    SeedLot,
)

# What must be struck out first, by related name.
LEANING = {
    Field: (
        "plantings",
        "applications",
        "statements",
        "parts",
        "harvest_lots",
        "grazings",
        "mulch_sheets",
    ),
    Planting: (
        "terminations",
        "observations",
        "samples",
        "applications",
        "harvest_lots",
        "grazings",
        "mulch_sheets",
    ),
    InputProduct: ("applications", "counts", "lots"),
    SeedLot: ("searches", "counts"),
    HarvestLot: ("storages", "sales", "counts"),
    Equipment: ("clean_outs",),
}
STILL_USED = _("Other records lean on this one. Void those first: %(what)s.")


class VoidForm(forms.Form):
    reason = forms.CharField(
        label=_("Why is it struck out?"),
        max_length=500,
        widget=forms.Textarea(attrs={"rows": 3}),
    )

    def __init__(self, data: Any = None, *, row: Record) -> None:
        super().__init__(data)
        self.row = row

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean() or self.cleaned_data
        if self.row.voided_at:
            raise forms.ValidationError(_("It is voided already."))
        leaning = leaning_on(self.row)
        if leaning:
            raise forms.ValidationError(
                STILL_USED, params={"what": "; ".join(map(str, leaning))}
            )
        return cleaned


def leaning_on(row: Record) -> list[Any]:
    """Up to five live records that would hang in the air without this one."""
    found: list[Any] = []
    for name in LEANING.get(type(row), ()):
        found += getattr(row, name).filter(voided_at=None)[:5]
    if isinstance(row, SeedLot):
        lines = row.lines.filter(planting__voided_at=None).select_related("planting")
        found += [line.planting for line in lines[:5]]
    return found[:5]
