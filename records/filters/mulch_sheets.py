"""Narrowing the list of films and tarps."""

from __future__ import annotations

from typing import Any

import django_filters as df
from django import forms
from django.utils.translation import gettext_lazy as _

from records.filters.base import RecordFilter, by_field, by_kind
from records.models import MulchSheet


class MulchSheetFilter(RecordFilter):
    DAY = "laid_on"
    WORDS = ("field__name", "material_words", "approval", "notes")
    field = by_field("field")
    kind = by_kind("planting__lines__kind")
    material = df.ChoiceFilter(label=_("Material"), choices=MulchSheet.Material.choices)
    lies = df.BooleanFilter(
        label=_("Only what still lies"), method="still", widget=forms.CheckboxInput()
    )

    def still(self, rows: Any, name: str, value: Any) -> Any:
        return rows.filter(taken_off_on=None) if value else rows
