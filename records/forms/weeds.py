"""Noxious weeds of a tag, each with its number."""

from __future__ import annotations

from typing import Any

from django import forms
from django.utils.translation import gettext_lazy as _

from records.forms.by_weight import CountByWeightField
from records.forms.rows import RowForm
from records.models import NoxiousWeed


class WeedForm(RowForm):
    name = forms.CharField(label=_("Noxious weed"), max_length=80, required=False)
    count_per_kg = CountByWeightField(
        label=_("Number in a weight of seed"),
        required=False,
        help_text=_("Such as 3/lb."),
    )

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean() or self.cleaned_data
        for name in self.fields if self.is_filled else ():
            if not cleaned.get(name) and name not in self.errors:
                self.add_error(name, _("Name each weed with its number."))
        return cleaned

    def row(self) -> NoxiousWeed:
        return NoxiousWeed(**self.cleaned_data)


class BaseWeeds(forms.BaseFormSet):  # type: ignore[type-arg]
    def clean(self) -> None:
        seen = set()
        for form in self.forms:
            told = form.cleaned_data if form.is_valid() else {}
            name = told.get("name", "").casefold()
            if name and name in seen:
                form.add_error("name", _("This weed stands twice."))
            seen.add(name)


Weeds = forms.formset_factory(
    WeedForm, formset=BaseWeeds, extra=1, max_num=30, absolute_max=40
)
