"""A compost batch, with its days."""

from __future__ import annotations

from typing import Any, ClassVar

from django import forms
from django.utils.translation import gettext_lazy as _

from farm.forms.base import DateInput
from farm.forms.measures import TempField
from records.forms.rows import RowForm, RowsForm
from records.models import CompostBatch, CompostDay

TWICE = _("This day stands twice.")


class DayForm(RowForm):
    day = forms.DateField(label=_("Day"), required=False, widget=DateInput())
    temp_c = TempField(label=_("Temperature inside"), required=False)
    turned = forms.BooleanField(label=_("Turned"), required=False)

    @property
    def is_filled(self) -> bool:
        told = getattr(self, "cleaned_data", {})
        return bool(told.get("day") or told.get("turned")) or (
            told.get("temp_c") is not None
        )

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean() or self.cleaned_data
        if self.is_filled and not cleaned.get("day") and "day" not in self.errors:
            self.add_error("day", _("Say which day it was."))
        temp = cleaned.get("temp_c")
        if temp is not None and not -40 <= temp <= 100:
            self.add_error("temp_c", _("No compost is that cold or hot."))
        return cleaned

    def row(self) -> CompostDay:
        told = self.cleaned_data
        return CompostDay(day=told["day"], temp_c=told["temp_c"], turned=told["turned"])


Days = forms.formset_factory(DayForm, extra=5, max_num=400, absolute_max=500)


class CompostBatchForm(RowsForm[CompostBatch]):
    HAPPENED = ("started_on", "finished_on")
    ROWS = Days
    RELATED = "days"

    class Meta:
        model = CompostBatch
        fields = [
            "name",
            "feedstocks",
            "carbon_nitrogen",
            "method",
            "started_on",
            "finished_on",
            "done_by",
            "notes",
        ]
        widgets: ClassVar = {"feedstocks": forms.Textarea(attrs={"rows": 3})}

    def as_initial(self, row: CompostDay) -> dict[str, Any]:
        return {"day": row.day, "temp_c": row.temp_c, "turned": row.turned}

    def rows_fit(self) -> bool:
        days = [row.cleaned_data["day"] for row in self.filled()]
        started = self.cleaned_data.get("started_on")
        for row in self.filled():
            day = row.cleaned_data["day"]
            if days.count(day) > 1:
                row.add_error("day", TWICE)
            if day > self.today:
                row.add_error("day", _("This day is still to come."))
            if started and day < started:
                row.add_error("day", _("The batch was not yet started."))
        return not any(row.errors for row in self.rows.forms)
