"""Two ways to leave a residue, as two lines over the days."""

from __future__ import annotations

import math
from collections.abc import Iterator

from django.utils.safestring import SafeString
from django.utils.translation import gettext as _

from farm.units import KG_M2_PER_LB_AC, KG_M2_PER_T_HA, System
from reports.calc.shapes.choice import ResidueChoice, ResidueSide
from reports.drawings.pieces import frame, line, piece, words

WIDTH, HEIGHT = 340.0, 170.0
LEFT, RIGHT, TOP, FOOT = 44.0, 72.0, 18.0, 32.0
STEP_DAYS = 30


def mass_curve(choice: ResidueChoice, *, ident: str, system: System) -> SafeString:
    """Draw the mass left over the days, left on top and worked in."""
    factor, unit = (
        (KG_M2_PER_LB_AC, "lb/ac") if system is System.US else (KG_M2_PER_T_HA, "t/ha")
    )
    sides = [side for side in (choice.on_top, choice.worked_in) if side is not None]
    if not sides:
        return SafeString("")
    paths = [_points(side, factor) for side in sides]
    longest = max(x for path in paths for x, _y in path) or 1
    highest = round_up(max(y for path in paths for _x, y in path))
    parts = [*_axes(longest, highest, unit)]
    ends = _apart([_at(*path[-1], longest, highest)[1] for path in paths])
    for path, end, (word, dash) in zip(paths, ends, _styles(sides), strict=True):
        dots = [_at(x, y, longest, highest) for x, y in path]
        told = " ".join(f"{x:.1f},{y:.1f}" for x, y in dots)
        parts.append(
            piece(
                "polyline",
                points=told,
                fill="none",
                stroke="currentColor",
                stroke_width=1.6,
                stroke_dasharray=dash,
            )
        )
        parts.append(words(word, WIDTH - RIGHT + 4, end + 3))
    return frame(
        *parts,
        ident=ident,
        width=WIDTH,
        height=HEIGHT,
        title=_("Residue left over the days after the end"),
        desc=_("A full line for residue left on top, a broken line for worked in."),
    )


def _styles(sides: list[ResidueSide]) -> list[tuple[str, str]]:
    looks = {
        "on_top": (_("left on top"), "none"),
        "worked_in": (_("worked in"), "5 3"),
    }
    return [looks[side.placement.value] for side in sides]


def _points(side: ResidueSide, factor: float) -> list[tuple[float, float]]:
    return [
        (float(point.offset_days), point.mass_likely_kg_m2 / factor)
        for point in side.curve
    ] or [(0.0, 0.0)]


def _at(x: float, y: float, longest: float, highest: float) -> tuple[float, float]:
    wide, tall = WIDTH - LEFT - RIGHT, HEIGHT - TOP - FOOT
    return LEFT + wide * x / longest, TOP + tall * (1 - y / highest)


def _axes(longest: float, highest: float, unit: str) -> Iterator[SafeString]:
    base, right = HEIGHT - FOOT, WIDTH - RIGHT
    yield line(LEFT, base, right, base)
    yield line(LEFT, TOP, LEFT, base)
    yield words(unit, LEFT, 10, text_anchor="middle")
    for part in range(3):
        value = highest * part / 2
        y = _at(0, value, longest, highest)[1]
        yield line(LEFT, y, right, y, stroke_width=0.4, stroke_opacity="0.4")
        yield words(f"{value:,.4g}", LEFT - 5, y + 3, text_anchor="end")
    step = STEP_DAYS * max(1, math.ceil(longest / STEP_DAYS / 6))
    for day in range(0, int(longest) + 1, step):
        x = _at(day, 0, longest, highest)[0]
        yield line(x, base, x, base + 3)
        yield words(str(day), x, base + 13, text_anchor="middle")
    middle = (LEFT + right) / 2
    yield words(_("days after the end"), middle, base + 26, text_anchor="middle")


def round_up(value: float) -> float:
    """The next even figure of one or two digits."""
    if value <= 0:
        return 1.0
    size = 10.0 ** math.floor(math.log10(value))
    return next(size * step for step in (1, 2, 4, 6, 8, 10) if value <= size * step)


def _apart(heights: list[float]) -> list[float]:
    """Keep the words at the ends of the lines from lying on each other."""
    if len(heights) < 2 or abs(heights[0] - heights[1]) >= 11:
        return heights
    middle = sum(heights) / 2
    return [middle - 6, middle + 6]
