"""The one room that knows WeasyPrint; what it prints can fetch nothing."""

from __future__ import annotations

import importlib
import re
import threading
from collections.abc import Iterator
from functools import cache, lru_cache
from importlib import resources
from types import ModuleType
from typing import Any, NoReturn

from reports.collector import swept
from reports.pdf.pieces import Leaf, Mark, Piece
from reports.pdf.tags import finisher

# Debian's name for the native libraries that the pip package does not bring.
REMEDY = "apt-get install --no-install-recommends libpango-1.0-0 libpangoft2-1.0-0"
VARIANT = "pdf/ua-1"
PREFIX_LETTERS = 12
MINE = threading.local()
# Rules of the engine for what no paper has: notes, fields, words from right to left.
UNUSED = re.compile(
    r"^(?:::(?:foot)?note-|:is\((?:input|colgroup)|[^{\n]*\[dir)[^{\n]*\{[^}]*\}$", re.M
)


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
        return _written(_laid_out(html, css), prefix="")


def piece(leaf: Leaf) -> Piece:
    """Print one piece of a longer paper, with what is needed to join it.

    What it leaves behind is for the caller to sweep up.
    """
    document, prefix = _laid_out(leaf.html, leaf.css), f"{leaf.key[:PREFIX_LETTERS]}-"
    marks = tuple(_marks(document.make_bookmark_tree(), 0))
    return Piece(_written(document, prefix=prefix), len(document.pages), marks, prefix)


def _written(document: Any, *, prefix: str) -> bytes:
    mended = finisher(prefix=prefix)
    printed: bytes = document.write_pdf(pdf_variant=VARIANT, finisher=mended)
    return printed


def to_untagged(html: str, *, css: str) -> bytes:
    """Print marks that are drawn on pages later, outside of any text."""
    printed: bytes = _laid_out(html, css, variant=None).write_pdf()
    return printed


def _laid_out(html: str, css: str, *, variant: str | None = VARIANT) -> Any:
    page = _page(engine())(string=html, url_fetcher=_refuser())
    return page.render(
        stylesheets=[_style(css)], font_config=_fonts(), pdf_variant=variant
    )


@cache
def _page(engine: ModuleType) -> Any:
    """The engine's page, without rules that are tried on every cell and match none.

    They, and five styles for notes that a cell might have, are a tenth of the work.
    Where a later engine holds its rules elsewhere, it keeps them all.
    """
    own = resources.files("weasyprint").joinpath("css", "html5_ua.css")
    if not own.is_file():
        return engine.HTML
    told = UNUSED.sub("", own.read_text(encoding="utf-8"))
    told = told.replace("\n::marker", "\nli::marker")
    less = engine.CSS(string=told, url_fetcher=_refuser())
    return type(
        "Page", (engine.HTML,), {"_ua_stylesheets": lambda self, forms=False: [less]}
    )


def _marks(tree: Any, level: int) -> Iterator[Mark]:
    for title, (page, _x, _y), inner, _state in tree:
        yield Mark(level, title, page)
        yield from _marks(inner, level + 1)


@lru_cache(maxsize=8)
def _style(css: str) -> Any:
    """A style, read once for all pieces of a paper."""
    return engine().CSS(string=css, url_fetcher=_refuser())


def _fonts() -> Any:
    """The fonts of the machine, looked up once by each thread: they are no two's."""
    if not hasattr(MINE, "fonts"):
        MINE.fonts = engine().text.fonts.FontConfiguration()
    return MINE.fonts


def engine() -> ModuleType:
    """The engine itself.

    Raises
    ------
    PdfUnavailableError
        If a native library is missing.
    """
    # Taken up late: it costs half a second, and its native libraries may be missing.
    try:
        return importlib.import_module("weasyprint")
    except OSError as error:
        raise PdfUnavailableError(str(error)) from error


@cache
def _refuser() -> object:
    fetcher = engine().urls.URLFetcher
    refuser: type = type("Refuser", (fetcher,), {"fetch": _refuse})
    return refuser()


def _refuse(self: object, url: str, headers: object = None) -> NoReturn:
    raise FetchRefusedError(url)
