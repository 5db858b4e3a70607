"""What an inspector asks for: a period."""

from __future__ import annotations

from typing import Any

from django import forms
from django.utils.translation import gettext_lazy as _

from farm.forms.base import FARTHEST, OLDEST, DateInput

LARGEST_BYTES = 100 * 1024 * 1024


class FileForm(forms.Form):
    file = forms.FileField(label=_("File"))

    def clean_file(self) -> Any:
        file = self.cleaned_data["file"]
        if file.size > LARGEST_BYTES:
            raise forms.ValidationError(_("This file is larger than any packet."))
        return file


class PeriodForm(forms.Form):
    first = forms.DateField(label=_("From"), widget=DateInput())
    last = forms.DateField(label=_("To"), widget=DateInput())

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean() or self.cleaned_data
        first, last = cleaned.get("first"), cleaned.get("last")
        if first and last and last < first:
            self.add_error("last", _("The period ends before it begins."))
        for name, day in list(cleaned.items()):
            if day and not OLDEST <= day <= FARTHEST:
                self.add_error(name, _("The books begin in 1900 and end in 2199."))
        return cleaned
