"""A person's own pages: name and units, where they are signed in, the second step."""

from __future__ import annotations

from typing import Any

from django.conf import settings
from django.contrib import messages
from django.contrib.auth import views as auth
from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.utils import timezone
from django.utils.translation import gettext as _
from django.views.decorators.http import require_http_methods

from farm import second_step
from farm.access import FarmRequest
from farm.forms import AccountForm
from farm.forms.signing import FirstCodeForm, ForgottenForm, OwnPasswordForm
from farm.models import SignIn, User

GET_OR_POST = ["GET", "HEAD", "POST"]


@require_http_methods(GET_OR_POST)
def account(request: FarmRequest) -> HttpResponse:
    # A copy, so that a name refused does not stand at the head of the page.
    own = User.objects.get(pk=request.user.pk)
    form = AccountForm(request.POST or None, instance=own)
    if request.method == "POST" and form.is_valid():
        form.save()
        messages.success(request, _("Saved."))
        return redirect("account")
    page = {"form": form, "device": second_step.device_of(request.user)}
    return render(request, "farm/account.html", page)


@require_http_methods(GET_OR_POST)
def sign_ins(request: FarmRequest) -> HttpResponse:
    rows = SignIn.objects.filter(user=request.user, expire_date__gt=timezone.now())
    here = request.session.session_key
    if request.method == "POST":
        ended = [row for row in rows if _meant(row, request, here)]
        SignIn.objects.filter(pk__in=[row.pk for row in ended]).delete()
        messages.success(request, _("Ended. That browser has to sign in again."))
        return redirect("sign-ins")
    page = {"rows": [(row, row.pk == here) for row in rows.order_by("-started_at")]}
    return render(request, "farm/sign_ins.html", page)


def _meant(row: SignIn, request: HttpRequest, here: str | None) -> bool:
    asked = request.POST.get("end", "")
    return row.pk != here and asked in {"others", row.mark}


@require_http_methods(GET_OR_POST)
def second(request: FarmRequest) -> HttpResponse:
    """Set the second step up, or take it away."""
    user = request.user
    if second_step.device_of(user):
        return _second_stands(request)
    form = FirstCodeForm(request.POST or None, user=user)
    if request.method == "POST" and form.is_valid():
        codes = second_step.new_codes(user)
        return render(request, "farm/second_codes.html", {"codes": codes})
    device = second_step.prepare(user)
    page = {"form": form, "square": second_step.square(device), "key": _key(device)}
    return render(request, "farm/second.html", page)


def _second_stands(request: FarmRequest) -> HttpResponse:
    user = request.user
    form = OwnPasswordForm(request.POST or None, user=user)
    if request.method == "POST" and form.is_valid():
        if request.POST.get("do") == "codes":
            codes = second_step.new_codes(user)
            return render(request, "farm/second_codes.html", {"codes": codes})
        second_step.take_away(user)
        messages.success(request, _("From now on the password alone is asked for."))
        return redirect("account")
    page = {"form": form, "stands": True, "left": user.recovery_codes.count()}
    return render(request, "farm/second.html", page)


def _key(device: object) -> str:
    text = str(getattr(device, "config_url", "")).partition("secret=")[2]
    key = text.partition("&")[0]
    return " ".join(key[at : at + 4] for at in range(0, len(key), 4))


class PasswordView(auth.PasswordChangeView):
    """A new password; whoever is signed in elsewhere has to know it."""

    template_name = "farm/password.html"
    success_url = "/password/changed/"

    def form_valid(self, form: Any) -> HttpResponse:
        answer = super().form_valid(form)
        here = self.request.session.session_key
        SignIn.objects.filter(user=form.user).exclude(pk=here).delete()
        return answer


class ForgottenView(auth.PasswordResetView):
    """A letter with a link, where e-mail is set up; else a word on whom to ask."""

    template_name = "farm/forgotten.html"
    form_class = ForgottenForm
    email_template_name = "farm/letters/password.txt"
    subject_template_name = "farm/letters/password_subject.txt"
    success_url = "/password/sent/"

    def get_context_data(self, **more: Any) -> dict[str, Any]:
        return super().get_context_data(mail=settings.MAIL_IS_SET_UP, **more)

    def post(self, request: HttpRequest, *args: object, **more: object) -> HttpResponse:
        if not settings.MAIL_IS_SET_UP:
            return self.get(request, *args, **more)
        return super().post(request, *args, **more)


class NewPasswordView(auth.PasswordResetConfirmView):
    """A new password by a link; every browser has to sign in again."""

    template_name = "farm/password_new.html"
    success_url = "/sign-in/"

    def form_valid(self, form: Any) -> HttpResponse:
        answer = super().form_valid(form)
        SignIn.objects.filter(user=self.user).delete()
        messages.success(self.request, _("The password is set. Sign in with it."))
        return answer
