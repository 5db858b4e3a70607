"""The language a page is in: the person's, else the browser's choice, else its wish."""

from __future__ import annotations

from collections.abc import Callable
from contextlib import AbstractContextManager

from django.conf import settings
from django.http import HttpRequest, HttpResponse, QueryDict
from django.utils import translation

from farm.models import User

A_YEAR_S = 60 * 60 * 24 * 365
Answering = Callable[[HttpRequest], HttpResponse]


def known(code: str) -> str:
    """A language of ours by its code, or nothing."""
    return code if code in dict(settings.LANGUAGES) else ""


def of_person(user: object, *, otherwise: str = "") -> str:
    """What a letter to this person is written in, or a paper they asked for."""
    chosen = known(user.language) if isinstance(user, User) else ""
    return chosen or known(otherwise) or settings.LANGUAGE_CODE


def of_request(request: HttpRequest) -> str:
    user = getattr(request, "user", None)
    asked = translation.get_language_from_request(request)
    return of_person(user, otherwise=asked)


def spoken(answer: Answering) -> Answering:
    """Answer each request in its language; it stands behind the sign-in."""

    def through(request: HttpRequest) -> HttpResponse:
        language = of_request(request)
        with translation.override(language):
            response = answer(request)
        response.headers.setdefault("Content-Language", language)
        return response

    return through


def first(
    request: HttpRequest, wished: str, answer: Callable[[], HttpResponse]
) -> HttpResponse:
    """Answer in the language a link was made for, unless another was chosen here."""
    if not known(wished) or request.COOKIES.get(settings.LANGUAGE_COOKIE_NAME):
        return answer()
    with translation.override(wished):
        response = answer()
    response.headers["Content-Language"] = wished
    hold(response, wished)
    return response


def asked_in(query: str) -> str:
    """What somebody asks to be printed later, with the language they read now."""
    asked = QueryDict(query, mutable=True)
    asked["language"] = translation.get_language() or settings.LANGUAGE_CODE
    return asked.urlencode()


def spoken_for(query: str, user: object) -> AbstractContextManager[None]:
    """The language of what is printed behind somebody's back."""
    asked = known(QueryDict(query).get("language", ""))
    return translation.override(asked or of_person(user))


def hold(response: HttpResponse, language: str) -> None:
    """Let the browser remember a choice made before anybody is signed in."""
    response.set_cookie(
        settings.LANGUAGE_COOKIE_NAME,
        language,
        max_age=A_YEAR_S,
        secure=settings.SESSION_COOKIE_SECURE,
        samesite="Lax",
    )
