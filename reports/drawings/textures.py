"""What each ground looks like, and each mark: told apart without colour."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from django.utils.safestring import SafeString

from reports.calc.shapes.season import Ground, TickKind
from reports.drawings.pieces import Value, Way, lines, number, piece


def textures(ident: str, grounds: Iterable[Ground] = Ground) -> SafeString:
    """The hatches of one drawing; their names carry the drawing's own."""
    asked = set(grounds)
    told = [
        _pattern(ident, ground, *tile)
        for ground, tile in TILES.items()
        if ground in asked
    ]
    return piece("defs", *told)


def _pattern(ident: str, ground: Ground, size: float, *inside: str) -> SafeString:
    return piece(
        "pattern",
        *inside,
        id=f"{ident}-{ground.value}",
        patternUnits="userSpaceOnUse",
        width=size,
        height=size,
    )


def _lines(size: int) -> SafeString:
    """Level lines on a wide tile: a printer shows a seam at every edge."""
    return lines(((0, y, size, y) for y in range(2, size, 4)), stroke_width=0.8)


def _slants(size: float) -> SafeString:
    """Slanted lines, with the corners that a single line would leave out."""
    corners = (-1, 1, 1, -1), (size - 1, size + 1, size + 1, size - 1)
    return lines(((-1, size + 1, size + 1, -1), *corners), stroke_width=1.4)


def _checks(size: float) -> SafeString:
    half = size / 2
    return lines(((0, half, size, half), (half, 0, half, size)), stroke_width=2.2)


def _dots() -> SafeString:
    told = (
        piece("circle", cx=at, cy=at, r=0.6, fill="currentColor") for at in (2, 5.5)
    )
    return SafeString("".join(told))


TILES: Mapping[Ground, tuple[float, SafeString]] = {
    Ground.LIVING: (5, _slants(5)),
    Ground.CASH: (4, _checks(4)),
    Ground.RESIDUE: (40, _lines(40)),
    Ground.BARE: (7, _dots()),
}


def box(
    ident: str, ground: Ground, x: float, y: float, width: float, height: float
) -> SafeString:
    """A stretch of one ground."""
    plain = ground is Ground.NOT_YET
    dashes: dict[str, Value] = {"stroke_dasharray": "2 2"} if plain else {}
    return piece(
        "rect",
        class_=f"ground {ground.value}",
        x=x,
        y=y,
        width=width,
        height=height,
        fill="none" if plain else f"url(#{ident}-{ground.value})",
        stroke="currentColor",
        stroke_width=0.6,
        **dashes,
    )


def boxes(ident: str, ground: Ground, corners: Iterable[Way]) -> SafeString:
    """Many stretches of one ground, each from corner to corner, as one element."""
    told = (tuple(map(number, way)) for way in corners)
    return piece(
        "path",
        class_=f"ground {ground.value}",
        d="".join(f"M{a} {b}H{c}V{d}H{a}Z" for a, b, c, d in told),
        fill=f"url(#{ident}-{ground.value})",
        stroke="currentColor",
        stroke_width=0.6,
    )


def mark(kind: TickKind, x: float, y: float, *, seen: bool = True) -> SafeString:
    """A shape of its own for each mark: full when seen, open when worked out."""
    ink: dict[str, Value] = {
        "fill": "currentColor" if seen else "none",
        "stroke": "currentColor",
        "stroke_width": 1,
    }
    if kind is TickKind.EMERGED:
        return piece("circle", cx=x, cy=y, r=3, **ink)
    corners: dict[TickKind, list[tuple[float, float]]] = {
        TickKind.SOWN: [(-3.5, -3), (3.5, -3), (0, 3.5)],
        TickKind.FIRST_FLOWER: [(0, -4.5), (3.5, 0), (0, 4.5), (-3.5, 0)],
        TickKind.CUT: [(-3.5, 3), (3.5, 3), (0, -3.5)],
        TickKind.ENDED: [(-3, -3), (3, -3), (3, 3), (-3, 3)],
    }
    points = " ".join(f"{x + dx:.1f},{y + dy:.1f}" for dx, dy in corners[kind])
    return piece("polygon", points=points, **ink)
