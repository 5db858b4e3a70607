"""Signing in, and the codes of the second step."""

from __future__ import annotations

from typing import Any

from django import forms
from django.contrib.auth.forms import AuthenticationForm, PasswordResetForm
from django.utils.translation import get_language, override
from django.utils.translation import gettext_lazy as _

from farm import second_step
from farm.language import of_person
from farm.models import User

CODE = {"autocomplete": "one-time-code", "autocapitalize": "off"}


class SignInForm(AuthenticationForm):
    def clean_username(self) -> str:
        # One name, however it is typed, or wrong tries would be counted apart.
        return str(self.cleaned_data["username"]).strip().lower()


class ForgottenForm(PasswordResetForm):
    """Each letter goes out in the language of who receives it."""

    def send_mail(self, *args: Any, **options: Any) -> None:
        context = options.get("context") or args[2]
        with override(of_person(context["user"], otherwise=get_language() or "")):
            super().send_mail(*args, **options)


class CodeForm(forms.Form):
    """A code of the telephone, or one of the recovery codes."""

    code = forms.CharField(
        label=_("Code"), max_length=40, widget=forms.TextInput(attrs=CODE)
    )

    def __init__(self, data: Any = None, *, user: User) -> None:
        super().__init__(data)
        self.user = user

    def clean_code(self) -> str:
        code: str = self.cleaned_data["code"]
        told = second_step.verify(self.user, code)
        if told:
            raise forms.ValidationError(told)
        return code


class FirstCodeForm(forms.Form):
    """The first code of a telephone that has just read the square."""

    code = forms.CharField(
        label=_("Code the telephone shows"),
        max_length=10,
        widget=forms.TextInput(attrs={**CODE, "inputmode": "numeric"}),
    )

    def __init__(self, data: Any = None, *, user: User) -> None:
        super().__init__(data)
        self.user = user

    def clean_code(self) -> str:
        code: str = self.cleaned_data["code"]
        if not second_step.confirm(self.user, code):
            raise forms.ValidationError(
                _("This is not the code of now. Check the telephone’s clock.")
            )
        return code


class OwnPasswordForm(forms.Form):
    """A person's own password once more, before the second step is taken away."""

    password = forms.CharField(
        label=_("Your password"),
        strip=False,
        widget=forms.PasswordInput(attrs={"autocomplete": "current-password"}),
    )

    def __init__(self, data: Any = None, *, user: User) -> None:
        super().__init__(data)
        self.user = user

    def clean_password(self) -> str:
        password: str = self.cleaned_data["password"]
        if not self.user.check_password(password):
            raise forms.ValidationError(_("This is not your password."))
        return password
