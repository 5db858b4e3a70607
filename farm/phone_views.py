"""What a telephone asks for: where to start, what to keep, and who is signed in."""

from __future__ import annotations

from pathlib import Path
from typing import Any

from django.contrib.auth.decorators import login_not_required
from django.contrib.staticfiles import finders
from django.http import HttpRequest, HttpResponse, JsonResponse
from django.middleware.csrf import get_token
from django.shortcuts import redirect, render
from django.templatetags.static import static
from django.urls import reverse
from django.utils import timezone
from django.utils.translation import get_language
from django.utils.translation import gettext as _
from django.views.decorators.cache import never_cache
from django.views.decorators.http import require_GET

from farm import landing
from farm.access import FarmRequest

ICONS = (
    ("farm/icon.svg", "any", "image/svg+xml", "any"),
    ("farm/icon-192.png", "192x192", "image/png", "any"),
    ("farm/icon-512.png", "512x512", "image/png", "any"),
    ("farm/icon-512.png", "512x512", "image/png", "maskable"),
)


def icons() -> list[dict[str, str]]:
    return [
        {"src": static(path), "sizes": sizes, "type": type_, "purpose": purpose}
        for path, sizes, type_, purpose in ICONS
    ]


@require_GET
def start(request: FarmRequest) -> HttpResponse:
    return redirect(landing.address(request.user, now=timezone.now()))


@never_cache
@require_GET
@login_not_required
def who(request: HttpRequest) -> HttpResponse:
    """Who is signed in, and a fresh token to send with."""
    told: dict[str, Any] = {"user": None, "token": ""}
    if request.user.is_authenticated:
        told = {"user": request.user.pk, "token": get_token(request)}
    return JsonResponse(told)


@never_cache
@require_GET
@login_not_required
def worker(request: HttpRequest) -> HttpResponse:
    """The worker serves the whole site, so it must come from its top."""
    path = finders.find("farm/worker.js")
    assert isinstance(path, str)
    return HttpResponse(Path(path).read_bytes(), content_type="text/javascript")


@require_GET
@login_not_required
def manifest(request: HttpRequest) -> JsonResponse:
    told = {
        "name": _("Farm records"),
        "short_name": _("Farm"),
        "lang": get_language(),
        "start_url": reverse("start"),
        "scope": reverse("home"),
        "display": "standalone",
        "background_color": "#fbfaf5",
        "theme_color": "#24523a",
        "icons": icons(),
    }
    return JsonResponse(told, content_type="application/manifest+json")


@require_GET
@login_not_required
def no_signal(request: HttpRequest) -> HttpResponse:
    return render(request, "farm/no_signal.html")
