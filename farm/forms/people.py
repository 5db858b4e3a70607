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

from farm.forms.base import FARTHEST, OLDEST, DateInput, ModelForm
from farm.forms.names import named
from farm.models import Farm, Invitation, Membership, Role, User
from farm.models.people import LANGUAGES, Colours
from farm.names import honest
from farm.sharing import RefusalError, check

# What is opened to an inspector at most.
LONGEST = dt.timedelta(days=3660)
UNTIL = _("Leave empty where no end is set.")


class RoleAndDays(forms.Form):
    """A role, and the last day of it where there is one."""

    role = forms.ChoiceField(label=_("Role"), choices=Role.choices, initial=Role.CREW)
    until = forms.DateField(
        label=_("Until"), required=False, widget=DateInput(), help_text=UNTIL
    )

    sees_from = forms.DateField(
        label=_("Sees records from"),
        required=False,
        widget=DateInput(),
        help_text=_("For an inspector: the first day of the seasons to be inspected."),
    )
    sees_to = forms.DateField(
        label=_("Sees records to"),
        required=False,
        widget=DateInput(),
        help_text=_("For an inspector: the last day of the seasons to be inspected."),
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
        if role == Role.INSPECTOR:
            self._hold_period(cleaned.get("sees_from"), cleaned.get("sees_to"))
        elif role:
            cleaned |= {"sees_from": None, "sees_to": None}
        return cleaned

    def _hold_period(self, first: dt.date | None, last: dt.date | None) -> None:
        """The days an inspector sees: both given, and a whole season in them."""
        for name, day in (("sees_from", first), ("sees_to", last)):
            if day is None and name not in self.errors:
                self.add_error(name, _("Say which days the inspector is to see."))
            if day and not OLDEST <= day <= FARTHEST:
                self.add_error(name, _("The books begin in 1900 and end in 2199."))
                return
        if first is None or last is None:
            return
        if last < first:
            self.add_error("sees_to", _("The period ends before it begins."))
            return
        if last - first > LONGEST:
            self.add_error("sees_to", _("Open ten years at most."))
            return
        year = self.farm.season_year(first)
        seasons = [self.farm.season(one) for one in (year, year + 1)]
        if not any(first <= begins and ends <= last for begins, ends in seasons):
            sentence = _("No whole season lies in this period, so no paper would open.")
            self.add_error("sees_to", sentence)


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
    field_order = (
        "name",
        "email",
        "language",
        "role",
        "until",
        "sees_from",
        "sees_to",
    )

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
        told = {
            name: getattr(member, name)
            for name in ("role", "until", "sees_from", "sees_to")
        }
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
        help_text=_("Pages, letters and the papers you print come in it."),
    )
    units = forms.ChoiceField(
        label=_("Units shown"),
        required=False,
        choices=[("", _("as the farm has them")), *Farm.Units.choices],
    )

    look = forms.ChoiceField(
        label=_("Colours"),
        required=False,
        choices=[("", _("as the screen has them")), *Colours.choices],
    )

    class Meta:
        model = User
        fields: ClassVar = ["name", "language", "units", "look"]

    def clean_name(self) -> str:
        return honest(self.cleaned_data["name"])
