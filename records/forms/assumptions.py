"""A value of the farm's own for an assumption; the range comes with the link."""

from __future__ import annotations

from typing import Any, ClassVar

from django import forms
from django.utils.translation import gettext_lazy as _

from farm.forms.base import RecordForm
from records.models import OwnAssumption


class OwnAssumptionForm(RecordForm[OwnAssumption]):
    class Meta:
        model = OwnAssumption
        fields = ["key", "unit", "low", "high", "value", "reason", "notes"]
        widgets: ClassVar = {
            name: forms.HiddenInput() for name in ("key", "unit", "low", "high")
        }

    def __init__(self, data: Any = None, **options: Any) -> None:
        super().__init__(data, **options)
        told = {**self.initial, **(data.dict() if hasattr(data, "dict") else {})}
        if told.get("key"):
            name = str(told["key"]).replace("_", " ")
            self.fields["value"].label = f"{name} ({told.get('unit') or '–'})"
            self.fields["value"].help_text = _("From %(low)s to %(high)s.") % {
                "low": told.get("low"),
                "high": told.get("high"),
            }

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean()
        told = [cleaned[name] for name in ("low", "value", "high") if name in cleaned]
        if told != sorted(told):
            self.add_error("value", _("The value lies outside the range."))
        return cleaned
