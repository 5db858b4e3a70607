"""What a drill or a spreader is set by: a rate, and known ground."""

from __future__ import annotations

from typing import Any

from django import forms
from django.utils.translation import gettext_lazy as _

from farm.forms.measures import AreaField, LengthField, RateField
from farm.units import System


class CatchForm(forms.Form):
    rate_kg_m2 = RateField(label=_("Rate wanted, seed out of the bag"))
    row_width_m = LengthField(label=_("Row spacing"), required=False)
    rows = forms.IntegerField(
        label=_("Rows caught"), required=False, min_value=1, max_value=200
    )
    distance_m = LengthField(label=_("Distance"), required=False)
    area_m2 = AreaField(
        label=_("or area covered"),
        required=False,
        help_text=_("For a spreader; or a share of an acre to drive with the drill."),
    )

    def __init__(self, data: Any = None, *, system: System) -> None:
        super().__init__(data)
        for field in self.fields.values():
            field.system = system  # type: ignore[attr-defined]

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean() or self.cleaned_data
        for name, value in cleaned.items():
            if value is not None and value <= 0:
                self.add_error(name, _("It is more than nothing."))
        by_row = cleaned.get("row_width_m") and cleaned.get("distance_m")
        if not self.errors and not by_row and not cleaned.get("area_m2"):
            self.add_error(
                "distance_m", _("Give row spacing and distance, or an area.")
            )
        return cleaned
