"""The door: coming in by a link, signing in, and the second step."""

from __future__ import annotations

from functools import partial
from typing import Any

from django.contrib import messages
from django.contrib.auth import decorators, login
from django.contrib.auth import views as auth
from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.urls import reverse
from django.utils import timezone
from django.utils.translation import gettext as _
from django.views.decorators.cache import never_cache
from django.views.decorators.http import require_http_methods

from farm import landing, language, second_step, sharing
from farm.forms import ComeInForm
from farm.forms.signing import CodeForm, SignInForm
from farm.models import Invitation, Role, User

GET_OR_POST = ["GET", "HEAD", "POST"]
BACKEND = "django.contrib.auth.backends.ModelBackend"


class SignInView(auth.LoginView):
    template_name = "farm/sign_in.html"
    authentication_form = SignInForm
    redirect_authenticated_user = True

    def form_valid(self, form: Any) -> HttpResponse:
        user = form.get_user()
        if second_step.device_of(user):
            onward, now = self.get_redirect_url(), timezone.now()
            second_step.wait(self.request, user, onward, now=now)
            return redirect("sign-in-second")
        opened(self.request, user)
        asked = self.get_redirect_url()
        return redirect(asked or landing.address(user, now=timezone.now()))


def opened(request: HttpRequest, user: User) -> None:
    """Sign a person in, and note by what browser, so that it can be ended."""
    login(request, user, backend=BACKEND)
    request.session["browser"] = request.headers.get("User-Agent", "")[:200]
    request.session["since"] = timezone.now().isoformat()


@never_cache
@decorators.login_not_required
@require_http_methods(GET_OR_POST)
def sign_in_second(request: HttpRequest) -> HttpResponse:
    user = second_step.waiting(request, now=timezone.now())
    if user is None:
        messages.error(request, _("Sign in once more: it took too long."))
        return redirect("sign-in")
    form = CodeForm(request.POST or None, user=user)
    if request.method == "POST" and form.is_valid():
        onward = second_step.onward(request)
        opened(request, user)
        return redirect(onward or landing.address(user, now=timezone.now()))
    return render(request, "farm/sign_in_second.html", {"form": form})


@never_cache
@decorators.login_not_required
@require_http_methods(GET_OR_POST)
def come_in(request: HttpRequest, token: str) -> HttpResponse:
    found = sharing.known_by(token)
    if found is None:
        return render(request, "farm/no_way_in.html", {"state": "forged"}, status=404)
    state = found.state(timezone.now())
    if state != Invitation.State.OPEN:
        if found.used_by_id and found.used_by_id == request.user.pk:
            return redirect("farm", found.farm.slug)
        page = {"state": state.value, "invitation": found}
        return render(request, "farm/no_way_in.html", page, status=410)
    if request.user.is_authenticated:
        return _known(request, found)
    return language.first(request, found.language, partial(_new, request, found))


def _inside(found: Invitation) -> str:
    """The first page on the farm: for crew, their day."""
    name = "crew:today" if found.role == Role.CREW else "farm"
    return reverse(name, args=[found.farm.slug])


def _known(request: HttpRequest, found: Invitation) -> HttpResponse:
    """Somebody who is signed in: one button."""
    assert isinstance(request.user, User)
    page: dict[str, Any] = {"invitation": found}
    try:
        sharing.check(found, request.user.email)
        if request.method == "POST":
            sharing.accept(found, user=request.user, now=timezone.now())
            messages.success(request, _("Welcome to %(farm)s.") % {"farm": found.farm})
            return redirect(_inside(found))
    except sharing.RefusalError as why:
        page["refused"] = why
    return render(request, "farm/come_in.html", page)


def _new(request: HttpRequest, found: Invitation) -> HttpResponse:
    """Somebody new: an account is made, and linked to the farm."""
    form = ComeInForm(request.POST or None, invitation=found)
    if request.method == "POST" and form.is_valid():
        try:
            user = sharing.accept_new(found, now=timezone.now(), **form.cleaned_data)
            opened(request, user)
            return redirect(_inside(found))
        except sharing.RefusalError as why:
            form.add_error(None, str(why))
    return render(request, "farm/come_in.html", {"invitation": found, "form": form})
