"""What stands under a map: its scale, the north, and what each texture means."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

from django.utils.safestring import SafeString
from django.utils.translation import gettext as _

from farm.units import M_PER_FT, System
from reports.calc.shapes.season import Ground
from reports.drawings.map.sheet import WIDTH
from reports.drawings.pieces import Value, line, piece, words
from reports.drawings.textures import box
from reports.labels import label

M_PER_MI = 5280 * M_PER_FT
FOOT = 70.0
EDGE = 8.0
SIZE = 10.0
# The bar takes no more than this share of the width.
MOST_OF_WIDTH = 0.28
BAR = 5.0


def legend(
    ident: str, grounds: Sequence[Ground], top: float, *, scale: float, system: System
) -> Iterator[SafeString]:
    """The foot of a map, from this height down."""
    yield from _scale_bar(top + 14, scale, system)
    yield from _north(WIDTH - EDGE - 8, top + 6)
    for place, ground in enumerate(grounds):
        x = EDGE + 132 * place
        yield box(ident, ground, x, top + 46, 22, 11)
        yield words(label(ground), x + 27, top + 55.5, size=SIZE)


def round_length(scale: float, system: System) -> tuple[float, str]:
    """A round length that fits the bar, in metres, and how it is written."""
    most_m = (WIDTH - 2 * EDGE) * MOST_OF_WIDTH / scale
    near, far = (
        ((M_PER_FT, _("ft")), (M_PER_MI, _("mi")))
        if system is System.US
        else ((1.0, "m"), (1000.0, "km"))
    )
    metres, unit = far if most_m >= far[0] else near
    number = _round_down(most_m / metres)
    return number * metres, f"{number:,g} {unit}"


def _round_down(value: float) -> float:
    """The next 1, 2 or 5 with noughts that is not more."""
    size = 10.0 ** math.floor(math.log10(value))
    return size * max(step for step in (1, 2, 5) if step * size <= value * (1 + 1e-9))


def _scale_bar(y: float, scale: float, system: System) -> Iterator[SafeString]:
    length_m, told = round_length(scale, system)
    long = length_m * scale
    edge: dict[str, Value] = {"stroke": "currentColor", "stroke_width": 0.8}
    for share, fill in ((0, "currentColor"), (0.5, "none")):
        left = EDGE + long * share
        yield piece("rect", x=left, y=y, width=long / 2, height=BAR, fill=fill, **edge)
    yield words("0", EDGE, y + 17, size=SIZE)
    yield words(told, EDGE + long, y + 17, size=SIZE, text_anchor="middle")


def _north(x: float, y: float) -> Iterator[SafeString]:
    points = f"{x:.1f},{y:.1f} {x + 5:.1f},{y + 16:.1f} {x - 5:.1f},{y + 16:.1f}"
    yield piece("polygon", points=points, fill="currentColor")
    yield line(x, y + 16, x, y + 22, stroke_width=1.2)
    yield words(_("N"), x, y + 33, size=SIZE + 1, text_anchor="middle")
