"""What each ground looks like, and each mark: told apart without colour."""

from __future__ import annotations

from django.utils.safestring import SafeString

from reports.calc.shapes.season import Ground, TickKind
from reports.drawings.pieces import Value, line, piece


def textures(ident: str) -> SafeString:
    """The hatches of one drawing; their names carry the drawing's own."""
    return piece(
        "defs",
        _pattern(ident, Ground.LIVING, 5, *_slants(5)),
        _pattern(ident, Ground.CASH, 4, *_checks(4)),
        _pattern(ident, Ground.RESIDUE, 40, *_lines(40)),
        _pattern(
            ident,
            Ground.BARE,
            7,
            piece("circle", cx=2, cy=2, r=0.6, fill="currentColor"),
            piece("circle", cx=5.5, cy=5.5, r=0.6, fill="currentColor"),
        ),
    )


def _pattern(ident: str, ground: Ground, size: float, *inside: str) -> SafeString:
    return piece(
        "pattern",
        *inside,
        id=f"{ident}-{ground.value}",
        patternUnits="userSpaceOnUse",
        width=size,
        height=size,
    )


def _lines(size: int) -> list[SafeString]:
    """Level lines on a wide tile: a printer shows a seam at every edge."""
    return [line(0, y, size, y, stroke_width=0.8) for y in range(2, size, 4)]


def _slants(size: float) -> list[SafeString]:
    """Slanted lines, with the corners that a single line would leave out."""
    return [
        line(-1, size + 1, size + 1, -1, stroke_width=1.4),
        line(-1, 1, 1, -1, stroke_width=1.4),
        line(size - 1, size + 1, size + 1, size - 1, stroke_width=1.4),
    ]


def _checks(size: float) -> list[SafeString]:
    half = size / 2
    return [
        line(0, half, size, half, stroke_width=2.2),
        line(half, 0, half, size, stroke_width=2.2),
    ]


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
