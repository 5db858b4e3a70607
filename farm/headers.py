"""What a browser may do with our pages, said with every answer."""

from __future__ import annotations

from collections.abc import Callable

from django.http import HttpRequest, HttpResponse
from django.http.response import HttpResponseBase
from django.middleware.gzip import GZipMiddleware

# Everything comes from here, and nothing written into a page runs.
POLICY = "; ".join(
    (
        "default-src 'none'",
        "script-src 'self'",
        "style-src 'self'",
        "img-src 'self' data: blob:",
        "font-src 'self'",
        "connect-src 'self'",
        "manifest-src 'self'",
        "worker-src 'self'",
        "form-action 'self'",
        "base-uri 'none'",
        "frame-ancestors 'none'",
    )
)
PERMISSIONS = "geolocation=(self), camera=(self), microphone=()"

SQUEEZED = ("text/", "application/json", "application/geo+json")


class SqueezedPages(GZipMiddleware):
    """Pages go out small, for telephones; pictures and papers are small already."""

    def process_response(
        self, request: HttpRequest, response: HttpResponseBase
    ) -> HttpResponseBase:
        if not response.headers.get("Content-Type", "").startswith(SQUEEZED):
            return response
        return super().process_response(request, response)


Answering = Callable[[HttpRequest], HttpResponse]


def guarded(answer: Answering) -> Answering:
    """Add the policy, and keep pages of people who are signed in out of every store.

    Without a store, the button "back" after signing out shows no page of a farm.
    """

    def through(request: HttpRequest) -> HttpResponse:
        response = answer(request)
        # A browser shows a PDF in a page of its own, which our policy is not for.
        is_paper = response.headers.get("Content-Type") == "application/pdf"
        policy = "frame-ancestors 'none'" if is_paper else POLICY
        response.headers.setdefault("Content-Security-Policy", policy)
        response.headers.setdefault("Permissions-Policy", PERMISSIONS)
        if request.user.is_authenticated:
            response.headers.setdefault("Cache-Control", "no-store, private")
        return response

    return through
