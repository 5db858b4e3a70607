"""Letting a person in."""

from __future__ import annotations

from typing import Any

from django import forms
from django.utils.translation import gettext_lazy as _

from farm.forms.base import DateInput
from farm.models import Farm, Role


class PersonForm(forms.Form):
    email = forms.EmailField(label=_("E-mail"))
    name = forms.CharField(label=_("Name"), max_length=120)
    role = forms.ChoiceField(label=_("Role"), choices=Role.choices, initial=Role.CREW)
    until = forms.DateField(
        label=_("Until"),
        required=False,
        widget=DateInput(),
        help_text=_("Leave empty where no end is set."),
    )

    def __init__(self, data: Any = None, *, farm: Farm) -> None:
        super().__init__(data)
        self.farm = farm

    def clean_email(self) -> str:
        email: str = self.cleaned_data["email"].lower()
        if self.farm.memberships.filter(user__email=email).exists():
            raise forms.ValidationError(_("This person is already on the farm."))
        return email
