"""Animals, water and soil tests."""

from __future__ import annotations

from typing import Any

from django import forms
from django.utils.translation import gettext_lazy as _

from farm.forms.base import RecordForm
from farm.forms.measures import DepthField, RainField
from records.forms.choices import PlantingChoice
from records.forms.rows import RowForm, RowsForm
from records.models import Grazing, Irrigation, SoilTest, SoilValue


class GrazingForm(RecordForm[Grazing]):
    HAPPENED = ("in_on", "out_on")

    planting = PlantingChoice(label=_("Planting"), required=False)

    class Meta:
        model = Grazing
        fields = [
            "field",
            "planting",
            "animals",
            "head",
            "owner",
            "in_on",
            "out_on",
            "label_checked",
            "forage_test",
            "done_by",
            "notes",
        ]

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean()
        planting, field = cleaned.get("planting"), cleaned.get("field")
        if planting and field and planting.field_id != field.pk:
            self.add_error("planting", _("This planting is on another field."))
        return cleaned


class IrrigationForm(RecordForm[Irrigation]):
    HAPPENED = ("watered_on",)

    water_mm = RainField(label=_("Water"))

    class Meta:
        model = Irrigation
        fields = ["field", "watered_on", "water_mm", "source", "done_by", "notes"]


class ValueForm(RowForm):
    name = forms.CharField(label=_("What was measured"), max_length=80, required=False)
    value = forms.FloatField(label=_("Value"), required=False)
    unit = forms.CharField(label=_("Unit"), max_length=40, required=False)

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean() or self.cleaned_data
        if self.is_filled and not self.errors:
            for name in ("name", "value", "unit"):
                if cleaned.get(name) in (None, ""):
                    self.add_error(name, _("A value needs its name and its unit."))
        return cleaned

    def row(self) -> SoilValue:
        told = self.cleaned_data
        return SoilValue(name=told["name"], value=told["value"], unit=told["unit"])


Values = forms.formset_factory(ValueForm, extra=6, max_num=60, absolute_max=80)


class SoilTestForm(RowsForm[SoilTest]):
    HAPPENED = ("sampled_on",)
    ROWS = Values
    RELATED = "readings"

    depth_m = DepthField(label=_("Depth sampled"), required=False)

    class Meta:
        model = SoilTest
        fields = [
            "field",
            "sampled_on",
            "laboratory",
            "number",
            "depth_m",
            "done_by",
            "notes",
        ]

    def as_initial(self, row: SoilValue) -> dict[str, Any]:
        return {"name": row.name, "value": row.value, "unit": row.unit}

    def rows_fit(self) -> bool:
        told = [
            (row.cleaned_data["name"].strip().lower(), row.cleaned_data["unit"])
            for row in self.filled()
        ]
        if not told:
            self.add_error(None, _("Write down at least one value."))
        if len(set(told)) < len(told):
            self.add_error(None, _("One of the values stands twice."))
        return not self.errors
