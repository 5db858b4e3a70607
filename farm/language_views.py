"""Choosing the language, from the foot of every page."""

from __future__ import annotations

from django.contrib.auth.decorators import login_not_required
from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect
from django.utils.http import url_has_allowed_host_and_scheme
from django.views.decorators.http import require_POST

from farm import language
from farm.models import User


@require_POST
@login_not_required
def choose(request: HttpRequest) -> HttpResponse:
    """Keep the choice with the person, or with the browser of somebody unknown."""
    chosen = language.known(request.POST.get("language", ""))
    back = redirect(_back(request))
    if chosen:
        language.hold(back, chosen)
        if request.user.is_authenticated:
            User.objects.filter(pk=request.user.pk).update(language=chosen)
    return back


def _back(request: HttpRequest) -> str:
    """The page the choice was made on, if it is one of ours."""
    page = request.POST.get("next", "")
    hosts, secure = {request.get_host()}, request.is_secure()
    ours = url_has_allowed_host_and_scheme(page, hosts, require_https=secure)
    return page if ours else "/"
