"""The one room that knows WeasyPrint; what it prints can fetch nothing."""

from __future__ import annotations

import hashlib
import importlib
from collections.abc import Iterator
from functools import cache, lru_cache
from types import ModuleType
from typing import Any, NoReturn

from reports.collector import swept
from reports.pdf.pieces import Mark, Piece
from reports.pdf.tags import finished

# Debian's name for the native libraries that the pip package does not bring.
REMEDY = "apt-get install --no-install-recommends libpango-1.0-0 libpangoft2-1.0-0"
VARIANT = "pdf/ua-1"
PREFIX_LETTERS = 12


class PdfUnavailableError(Exception):
    """A native library that draws text is not on this machine."""

    remedy = REMEDY


class FetchRefusedError(Exception):
    """Something on a paper asked for a file or an address."""


def to_pdf(html: str, *, css: str) -> bytes:
    """Print a page. The same page and style give the same bytes.

    Raises
    ------
    PdfUnavailableError
        If a native library is missing.
    """
    # The boxes of every page hang on each other: only the collector frees them.
    with swept():
        printed: bytes = _laid_out(html, css).write_pdf(pdf_variant=VARIANT)
    return finished(printed)


def piece(html: str, css: str) -> Piece:
    """Print one piece of a longer paper, with what is needed to join it."""
    with swept():
        printed, pages, marks = _printed(html, css)
    named = hashlib.sha256(printed).hexdigest()[:PREFIX_LETTERS]
    return Piece(finished(printed, prefix=f"{named}-"), pages, marks, f"{named}-")


def _printed(html: str, css: str) -> tuple[bytes, int, tuple[Mark, ...]]:
    document = _laid_out(html, css)
    printed = document.write_pdf(pdf_variant=VARIANT)
    marks = tuple(_marks(document.make_bookmark_tree(), 0))
    return printed, len(document.pages), marks


def to_untagged(html: str, *, css: str) -> bytes:
    """Print marks that are drawn on pages later, outside of any text."""
    printed: bytes = _laid_out(html, css, variant=None).write_pdf()
    return printed


def _laid_out(html: str, css: str, *, variant: str | None = VARIANT) -> Any:
    page = _engine().HTML(string=html, url_fetcher=_refuser())
    return page.render(stylesheets=[_style(css)], pdf_variant=variant)


def _marks(tree: Any, level: int) -> Iterator[Mark]:
    for title, (page, _x, _y), inner, _state in tree:
        yield Mark(level, title, page)
        yield from _marks(inner, level + 1)


@lru_cache(maxsize=8)
def _style(css: str) -> Any:
    """A style, read once for all pieces of a paper."""
    return _engine().CSS(string=css, url_fetcher=_refuser())


def _engine() -> ModuleType:
    # Taken up late: it costs half a second, and its native libraries may be missing.
    try:
        return importlib.import_module("weasyprint")
    except OSError as error:
        raise PdfUnavailableError(str(error)) from error


@cache
def _refuser() -> object:
    fetcher = _engine().urls.URLFetcher
    refuser: type = type("Refuser", (fetcher,), {"fetch": _refuse})
    return refuser()


def _refuse(self: object, url: str, headers: object = None) -> NoReturn:
    raise FetchRefusedError(url)
