"""Planned plantings: one from a gap, or many on a sheet."""

from __future__ import annotations

import datetime as dt
import uuid
from typing import Any

from django import forms
from django.utils.translation import gettext_lazy as _

from farm.forms.base import DateInput, offered
from farm.forms.measures import AreaField, MeasureField
from farm.models import Farm, Field
from farm.units import System
from records.models import Kind, Planting
from records.planning import Planned

MOST_ROWS = 60


class PlanForm(forms.Form):
    """One planned planting with the days that bound it."""

    client_key = forms.UUIDField(widget=forms.HiddenInput, required=False)
    field = forms.ModelChoiceField(Field.objects.all(), label=_("Field"))
    kind = forms.ModelChoiceField(Kind.objects.all(), label=_("Kind"))
    planned_on = forms.DateField(label=_("Sow on"), widget=DateInput())
    area_m2 = AreaField(
        label=_("Area"), required=False, help_text=_("Leave empty for the whole field.")
    )
    method = forms.ChoiceField(
        label=_("How"), choices=Planting.Method.choices, required=False
    )
    sow_until = forms.DateField(
        label=_("At the latest on"), widget=DateInput(), required=False
    )
    look_on = forms.DateField(
        label=_("Look at it on"), widget=DateInput(), required=False
    )
    end_from = forms.DateField(
        label=_("End it from"), widget=DateInput(), required=False
    )
    end_by = forms.DateField(label=_("End it by"), widget=DateInput(), required=False)
    next_crop = forms.CharField(label=_("Next crop"), max_length=80, required=False)
    next_crop_on = forms.DateField(
        label=_("Next crop goes in on"), widget=DateInput(), required=False
    )

    def __init__(
        self, data: Any = None, *, farm: Farm, today: dt.date, **options: Any
    ) -> None:
        super().__init__(data, **options)
        self.farm, self.today = farm, today
        self.fields["client_key"].initial = uuid.uuid4()
        for field in self.fields.values():
            if isinstance(field, MeasureField):
                field.system = System(farm.units)
            if isinstance(field, forms.ModelChoiceField):
                field.queryset = offered(field.queryset, farm)

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean() or self.cleaned_data
        field, area = cleaned.get("field"), cleaned.get("area_m2")
        if field and area is None and "area_m2" not in self.errors:
            cleaned["area_m2"] = area = field.area_m2
        if field and area and area > field.area_m2 * 1.005:
            self.add_error("area_m2", _("This is more than the field has."))
        sow = cleaned.get("planned_on")
        for name in ("sow_until", "end_by", "next_crop_on"):
            day = cleaned.get(name)
            if sow and day and day < sow:
                self.add_error(name, _("This day comes before the sowing."))
        return cleaned

    def planned(self) -> Planned:
        known = Planned.__dataclass_fields__
        told = {key: row for key, row in self.cleaned_data.items() if key in known}
        method = told.get("method") or Planting.Method.BROADCAST
        return Planned(**{**told, "method": method})
