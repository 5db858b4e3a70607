"""Letting a person in."""

from __future__ import annotations

import datetime as dt
from typing import Any

from django import forms
from django.utils.translation import gettext_lazy as _

from farm.forms.base import DateInput
from farm.models import Farm, Role


class PersonForm(forms.Form):
    email = forms.EmailField(label=_("E-mail"), max_length=254)
    name = forms.CharField(label=_("Name"), max_length=120)
    role = forms.ChoiceField(label=_("Role"), choices=Role.choices, initial=Role.CREW)
    until = forms.DateField(
        label=_("Until"),
        required=False,
        widget=DateInput(),
        help_text=_("Leave empty where no end is set."),
    )

    def __init__(self, data: Any = None, *, farm: Farm, today: dt.date) -> None:
        super().__init__(data)
        self.farm, self.today = farm, today

    def clean_until(self) -> dt.date | None:
        until: dt.date | None = self.cleaned_data["until"]
        if until and until < self.today:
            raise forms.ValidationError(_("This day has passed."))
        return until

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean() or self.cleaned_data
        dated = cleaned.get("until") or "until" in self.errors
        if cleaned.get("role") == Role.INSPECTOR and not dated:
            self.add_error("until", _("An inspector comes in until a day."))
        return cleaned

    def clean_email(self) -> str:
        email: str = self.cleaned_data["email"].lower()
        if self.farm.memberships.filter(user__email=email).exists():
            raise forms.ValidationError(_("This person is already on the farm."))
        return email
