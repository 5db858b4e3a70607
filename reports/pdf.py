"""The one room that knows WeasyPrint; what it prints can fetch nothing."""

from __future__ import annotations

import gc
import importlib
from collections.abc import Mapping
from types import ModuleType
from typing import Any, NoReturn

from django.template.loader import render_to_string

from reports.collector import at_rest

# Debian's name for the native libraries that the pip package does not bring.
REMEDY = "apt-get install --no-install-recommends libpango-1.0-0 libpangoft2-1.0-0"


class PdfUnavailableError(Exception):
    """A native library that draws text is not on this machine."""

    remedy = REMEDY


class FetchRefusedError(Exception):
    """Something on a paper asked for a file or an address."""


def print_paper(name: str, values: Mapping[str, Any]) -> bytes:
    """Print the template of that name in the style that lies beside it."""
    html = render_to_string(f"reports/{name}.html", dict(values))
    return to_pdf(html, css=render_to_string(f"reports/{name}.css", dict(values)))


def to_pdf(html: str, *, css: str) -> bytes:
    """Print a page. The same page and style give the same bytes.

    Raises
    ------
    PdfUnavailableError
        If a native library is missing.
    """
    engine = _engine()
    fetcher = _refuser(engine)
    style = engine.CSS(string=css, url_fetcher=fetcher)
    page = engine.HTML(string=html, url_fetcher=fetcher)
    with at_rest():
        printed: bytes = page.write_pdf(stylesheets=[style], pdf_variant="pdf/ua-1")
    # The boxes of every page hang on each other: only the collector frees them.
    gc.collect()
    return printed


def _engine() -> ModuleType:
    # Taken up late: it costs half a second, and its native libraries may be missing.
    try:
        return importlib.import_module("weasyprint")
    except OSError as error:
        raise PdfUnavailableError(str(error)) from error


def _refuser(engine: ModuleType) -> object:
    refuser: type = type("Refuser", (engine.urls.URLFetcher,), {"fetch": _refuse})
    return refuser()


def _refuse(self: object, url: str, headers: object = None) -> NoReturn:
    raise FetchRefusedError(url)
