"""Inviting a person, coming in, and what a person says of themselves."""

from __future__ import annotations

import datetime as dt
from typing import Any, ClassVar

from django import forms
from django.contrib.auth.password_validation import (
    password_validators_help_text_html,
    validate_password,
)
from django.utils.translation import get_language
from django.utils.translation import gettext_lazy as _

from farm.forms.base import DateInput, ModelForm
from farm.forms.names import named
from farm.models import Farm, Invitation, Membership, Role, User
from farm.models.people import LANGUAGES
from farm.names import honest
from farm.sharing import RefusalError, check

UNTIL = _("Leave empty where no end is set.")


class RoleAndDays(forms.Form):
    """A role, and the last day of it where there is one."""

    role = forms.ChoiceField(label=_("Role"), choices=Role.choices, initial=Role.CREW)
    until = forms.DateField(
        label=_("Until"), required=False, widget=DateInput(), help_text=UNTIL
    )

    def __init__(
        self, data: Any = None, *, farm: Farm, today: dt.date, **options: Any
    ) -> None:
        super().__init__(data, **options)
        self.farm, self.today = farm, today

    def clean_until(self) -> dt.date | None:
        until: dt.date | None = self.cleaned_data["until"]
        if until and until < self.today:
            raise forms.ValidationError(_("This day has passed."))
        return until

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean() or self.cleaned_data
        role, dated = cleaned.get("role"), cleaned.get("until")
        if role == Role.INSPECTOR and not dated and "until" not in self.errors:
            self.add_error("until", _("An inspector comes in until a day."))
        if role == Role.OWNER and dated:
            self.add_error("until", _("An owner stays until the farm is handed over."))
        return cleaned


class PersonForm(RoleAndDays):
    """Whom a link is made for."""

    name = forms.CharField(label=_("Name"), max_length=120)
    email = forms.EmailField(
        label=_("E-mail"),
        max_length=254,
        required=False,
        help_text=_("With it, only this person can use the link."),
    )
    language = forms.ChoiceField(
        label=_("Language"),
        required=False,
        choices=[("", _("as their browser asks")), *LANGUAGES],
        help_text=_("What the letter and the pages behind the link are written in."),
    )
    field_order = ("name", "email", "language", "role", "until")

    def clean_name(self) -> str:
        return named(self.cleaned_data["name"])

    def clean_email(self) -> str:
        email: str = self.cleaned_data["email"].lower()
        members = self.farm.memberships.on(self.today)
        if email and members.filter(user__email=email).exists():
            raise forms.ValidationError(_("This person is already on the farm."))
        return email


class MemberForm(RoleAndDays):
    """What a member may do, and for how long."""

    def __init__(self, data: Any = None, *, member: Membership, **options: Any) -> None:
        told = {"role": member.role, "until": member.until}
        super().__init__(data, farm=member.farm, initial=told, **options)


class ComeInForm(forms.Form):
    """A new account, made at the door."""

    email = forms.EmailField(label=_("E-mail"), max_length=254)
    name = forms.CharField(label=_("Name"), max_length=120)
    language = forms.ChoiceField(label=_("Language"), required=False, choices=LANGUAGES)
    password = forms.CharField(
        label=_("Password"),
        strip=False,
        widget=forms.PasswordInput(attrs={"autocomplete": "new-password"}),
        help_text=password_validators_help_text_html(),
    )

    def __init__(self, data: Any = None, *, invitation: Invitation) -> None:
        told = {"email": invitation.email, "name": invitation.name}
        told["language"] = get_language() or ""
        super().__init__(data, initial=told)
        self.invitation = invitation

    def clean_name(self) -> str:
        return named(self.cleaned_data["name"])

    def clean_email(self) -> str:
        email: str = self.cleaned_data["email"].lower()
        try:
            check(self.invitation, email)
        except RefusalError as why:
            raise forms.ValidationError(str(why)) from None
        if User.objects.filter(email=email).exists():
            sentence = _("There is an account with this e-mail. Sign in with it first.")
            raise forms.ValidationError(sentence)
        return email

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean() or self.cleaned_data
        if "password" in cleaned:
            told = User(email=cleaned.get("email", ""), name=cleaned.get("name", ""))
            try:
                validate_password(cleaned["password"], told)
            except forms.ValidationError as why:
                self.add_error("password", why)
        return cleaned


class AccountForm(ModelForm[User]):
    language = forms.ChoiceField(
        label=_("Language"),
        required=False,
        choices=[("", _("as the browser asks")), *LANGUAGES],
    )
    units = forms.ChoiceField(
        label=_("Units shown"),
        required=False,
        choices=[("", _("as the farm has them")), *Farm.Units.choices],
    )

    class Meta:
        model = User
        fields: ClassVar = ["name", "language", "units"]

    def clean_name(self) -> str:
        return honest(self.cleaned_data["name"])
