"""Page numbers put on after the joining, as marks beside the text proper."""

from __future__ import annotations

import io
from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache
from html import escape
from typing import Any

import pikepdf
from pikepdf import Dictionary

from reports.pdf.printing import to_untagged

# How far the words stand from the edges at the sides, and above the lower one. [pt]
SIDE, LOW, LINE = 39.69, 16.7, 12.0
DIGITS = "0123456789"
STYLE = """@page { size: 400pt 12pt; margin: 0 }
body { margin: 0; font: 8pt/12pt "Noto Sans", "Liberation Sans", "Helvetica Neue",
  Arial, "DejaVu Sans Condensed", "DejaVu Sans", sans-serif; color: #333 }
p { margin: 0; break-after: page; white-space: pre }
a { color: inherit; text-decoration: none }"""


@dataclass(frozen=True)
class Numbering:
    """What stands below every page: words round its number, and what paper it is."""

    page: str
    of: str
    paper: str


@dataclass(frozen=True)
class Form:
    """One word or digit, printed once and drawn on many pages. [pt]"""

    name: str
    drawn: Any
    width: float


def number_pages(pdf: pikepdf.Pdf, words: Numbering) -> None:
    """Number every page; the marks are told to be no part of the text."""
    told = (words.page, words.of, words.paper, *DIGITS)
    source, widths = _printed(told)
    with pikepdf.open(io.BytesIO(source)) as drawn:
        forms = {
            word: Form(f"/No{n}", pdf.copy_foreign(page.as_form_xobject()), width)
            for n, (word, page, width) in enumerate(
                zip(told, drawn.pages, widths, strict=True)
            )
        }
        last = len(pdf.pages)
        for number, page in enumerate(pdf.pages, start=1):
            line = (words.page, *str(number), words.of, *str(last))
            _put(page, forms[words.paper], [forms[one] for one in line])


def _put(page: pikepdf.Page, paper: Form, number: list[Form]) -> None:
    _left, _low, right, _top = (float(side) for side in page.mediabox)
    x = right - SIDE - sum(one.width for one in number)
    line = ["/Artifact BMC", _draw(page, paper, SIDE)]
    for one in number:
        line.append(_draw(page, one, x))
        x += one.width
    line.append("EMC\n")
    page.contents_add("\n".join(line).encode())


def _draw(page: pikepdf.Page, one: Form, x: float) -> str:
    _offer(page, one)
    return f"q 1 0 0 1 {x:.2f} {LOW:.2f} cm {one.name} Do Q"


def _offer(page: pikepdf.Page, one: Form) -> None:
    if "/XObject" not in page.obj.Resources:
        page.obj.Resources.XObject = Dictionary()
    if one.name not in page.obj.Resources.XObject:
        page.obj.Resources.XObject[one.name] = one.drawn


@lru_cache(maxsize=4)
def _printed(words: tuple[str, ...]) -> tuple[bytes, tuple[float, ...]]:
    """A page for each word, and how wide it is: a link tells the box of its text."""
    body = "".join(f'<p><a href="#x">{escape(word)}</a></p>' for word in words)
    printed = to_untagged(f'<body id="x">{body}', css=STYLE)
    with pikepdf.open(io.BytesIO(printed)) as pdf:
        widths = tuple(_widths(pdf))
    return printed, widths


def _widths(pdf: pikepdf.Pdf) -> Iterator[float]:
    for page in pdf.pages:
        left, _top, right, _low = (float(side) for side in page.obj.Annots[0].Rect)
        yield right - left
        del page.obj["/Annots"]
