"""A search for organic seed, with each source asked."""

from __future__ import annotations

from typing import Any

from django import forms
from django.utils.translation import gettext_lazy as _

from farm.forms.base import DateInput
from farm.forms.measures import MassField
from records.forms.rows import RowForm, RowsForm
from records.models import SeedSearch, SourceAsked


class AskedForm(RowForm):
    source = forms.CharField(label=_("Source asked"), max_length=120, required=False)
    asked_on = forms.DateField(label=_("Asked on"), required=False, widget=DateInput())
    answer = forms.CharField(label=_("Answer"), max_length=300, required=False)

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean() or self.cleaned_data
        if self.is_filled:
            for name in ("source", "asked_on", "answer"):
                if not cleaned.get(name) and name not in self.errors:
                    self.add_error(name, _("Each source needs name, day and answer."))
        return cleaned

    def row(self) -> SourceAsked:
        told = self.cleaned_data
        return SourceAsked(
            source=told["source"], asked_on=told["asked_on"], answer=told["answer"]
        )


Asked = forms.formset_factory(AskedForm, extra=3, max_num=20, absolute_max=40)


class SeedSearchForm(RowsForm[SeedSearch]):
    HAPPENED = ("searched_on",)
    ROWS = Asked
    RELATED = "asked"

    wanted_kg = MassField(label=_("Weight wanted"), required=False)

    class Meta:
        model = SeedSearch
        fields = [
            "kind",
            "traits",
            "wanted_kg",
            "searched_on",
            "reason",
            "lot",
            "done_by",
            "notes",
        ]

    def as_initial(self, row: SourceAsked) -> dict[str, Any]:
        return {"source": row.source, "asked_on": row.asked_on, "answer": row.answer}

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean()
        kind, lot = cleaned.get("kind"), cleaned.get("lot")
        if kind and lot and lot.kind_id != kind.pk:
            self.add_error("lot", _("This lot is of another kind."))
        return cleaned

    def rows_fit(self) -> bool:
        names = [row.cleaned_data["source"].strip().lower() for row in self.filled()]
        for row in self.filled():
            day = row.cleaned_data["asked_on"]
            if day > self.today:
                row.add_error("asked_on", _("This day is still to come."))
            if names.count(row.cleaned_data["source"].strip().lower()) > 1:
                row.add_error("source", _("This source stands twice."))
        return not any(row.errors for row in self.rows.forms)
