"""The pieces of a drawing: elements, text, and the frame with its name."""

from __future__ import annotations

import html
from collections.abc import Iterable
from functools import cache

from django.utils.safestring import SafeString

Value = str | float | int
# From where to where: two corners of a drawing.
Way = tuple[float, float, float, float]


# By hand and not by format_html, which takes ten times as long: a farm of a hundred
# fields has twenty thousand elements.
def piece(name: str, *inside: str, **attributes: Value) -> SafeString:
    """One element; ``stroke_width`` is written ``stroke-width``, ``class_`` class."""
    told = "".join(
        f' {_spelled(key)}="{_safe(number(value))}"'
        for key, value in attributes.items()
    )
    return SafeString(f"<{name}{told}>{''.join(map(_safe, inside))}</{name}>")


@cache
def _spelled(key: str) -> str:
    return key.rstrip("_").replace("_", "-")


def _safe(text: str) -> str:
    return text if isinstance(text, SafeString) else html.escape(text)


def number(value: Value) -> str:
    """A coordinate to a tenth: finer than a printer, and the same every time."""
    if isinstance(value, str):
        return value
    text = f"{value:.1f}"
    return "0" if text == "-0.0" else text.removesuffix(".0")


def words(
    text: str, x: float, y: float, *, size: float = 9, **more: Value
) -> SafeString:
    return piece("text", text, x=x, y=y, font_size=size, fill="currentColor", **more)


def line(x1: float, y1: float, x2: float, y2: float, **more: Value) -> SafeString:
    more.setdefault("stroke", "currentColor")
    more.setdefault("stroke_width", 0.75)
    return piece("line", x1=x1, y1=y1, x2=x2, y2=y2, **more)


def lines(ways: Iterable[Way], **more: Value) -> SafeString:
    """Many straight lines of one ink as one element."""
    more.setdefault("stroke", "currentColor")
    told = (tuple(map(number, way)) for way in ways)
    return piece("path", d="".join(f"M{a} {b}L{c} {d}" for a, b, c, d in told), **more)


def frame(
    *inside: str, ident: str, width: float, height: float, title: str, desc: str
) -> SafeString:
    """The whole drawing, with a name and a description for those who cannot see it."""
    return piece(
        "svg",
        piece("title", title, id=f"{ident}-title"),
        piece("desc", desc, id=f"{ident}-desc"),
        *inside,
        xmlns="http://www.w3.org/2000/svg",
        class_="drawing",
        role="img",
        aria_labelledby=f"{ident}-title {ident}-desc",
        viewBox=f"0 0 {number(width)} {number(height)}",
        width=width,
        height=height,
        font_family="system-ui, sans-serif",
    )
