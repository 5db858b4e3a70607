"""Where the name of a piece of land finds room, without lying on another."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

from farm.outlines import Ring
from reports.drawings.map.boxes import Box

SIZE = 10.5
LINE = 12.5
# The mean breadth of a letter, as a share of its size, on the safe side.
LETTER = 0.58
GAP = 3.0
LEVELS = 13

Stretch = tuple[float, float]
Lines = tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Label:
    """Lines of text about a middle."""

    lines: Lines
    x: float
    y: float

    @property
    def width(self) -> float:
        return _width(self.lines)

    @property
    def height(self) -> float:
        return LINE * len(self.lines) + 1

    @property
    def box(self) -> Box:
        across, down = self.width / 2 + 1, self.height / 2
        return Box(self.x - across, self.y - down, self.x + across, self.y + down)


def within(rings: Sequence[Ring], lines: Lines, taken: Sequence[Label]) -> Label | None:
    """The lines where they find room on the land, as near its middle as may be."""
    for x, y in _places(rings, _width(lines) + 2 * GAP, LINE * len(lines)):
        label = Label(lines, x, y)
        if not any(label.box.lies_on(other.box) for other in taken):
            return label
    return None


def beside(
    land: Box, lines: Lines, taken: Sequence[Label], others: Sequence[Box], sheet: Box
) -> Label | None:
    """The lines below, above, right or left of the land, clear of any other."""
    wide, tall = _width(lines) / 2 + GAP, LINE * len(lines) / 2 + GAP
    across, down = (land.left + land.right) / 2, (land.top + land.foot) / 2
    for x, y in (
        (across, land.foot + tall),
        (across, land.top - tall),
        (land.right + wide, down),
        (land.left - wide, down),
    ):
        label = Label(lines, x, y)
        blocked = any(label.box.lies_on(other) for other in others)
        blocked = blocked or any(label.box.lies_on(other.box) for other in taken)
        if not blocked and sheet.holds(label.box):
            return label
    return None


def _width(lines: Lines) -> float:
    return max(map(len, lines)) * SIZE * LETTER


def _places(
    rings: Sequence[Ring], width: float, height: float
) -> Iterator[tuple[float, float]]:
    """Middles of stretches wide enough for the whole height, the middle ones first."""
    around = Box.around(rings)
    top, foot = around.top, around.foot
    if foot - top < height:
        return
    found = []
    for level in range(LEVELS):
        share = level / (LEVELS - 1)
        y = top + height / 2 + share * (foot - top - height)
        levels = [y + height * (part - 0.5) for part in (0.02, 0.25, 0.5, 0.75, 0.98)]
        for left, right in _common([_stretches(rings, one) for one in levels]):
            if right - left >= width:
                found.append((abs(share - 0.5), left - right, (left + right) / 2, y))
    for _off, _room, x, y in sorted(found):
        yield x, y


def _stretches(rings: Sequence[Ring], y: float) -> list[Stretch]:
    """Where a level line runs within the land, holes left out."""
    crossed = sorted(
        x1 + (y - y1) / (y2 - y1) * (x2 - x1)
        for ring in rings
        for (x1, y1), (x2, y2) in pairwise(ring)
        if (y1 > y) != (y2 > y)
    )
    return list(zip(crossed[::2], crossed[1::2], strict=False))


def _common(levels: Sequence[list[Stretch]]) -> list[Stretch]:
    """What all levels have in common."""
    shared = levels[0]
    for level in levels[1:]:
        shared = [
            (max(a, c), min(b, d))
            for a, b in shared
            for c, d in level
            if c < b and a < d
        ]
    return shared
