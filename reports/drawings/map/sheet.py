"""Where on the sheet a corner lies, and the path around a piece of land."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from farm.outlines import Local, Ring, local_to

WIDTH = 700.0
# Room at the edges for a name in two lines.
MARGIN = 32.0
MOST_HEIGHT = 580.0
# Corners closer than this to the last one drawn cannot be seen.
NEAREST = 0.05

Polygons = Sequence[Sequence[Ring]]


@dataclass(frozen=True, slots=True)
class Sheet:
    """A farm laid on paper; ``scale`` is units of the drawing to a metre."""

    local: Local
    scale: float
    left: float
    top: float
    height: float

    @classmethod
    def under(cls, land: Iterable[Polygons]) -> Sheet:
        """The sheet that holds all this land as large as it can be drawn."""
        rings = [ring for polygons in land for polygon in polygons for ring in polygon]
        local = local_to(rings)
        flat = [corner for ring in rings for corner in local.ring(ring)]
        west, east = (end(x for x, _ in flat) for end in (min, max))
        south, north = (end(y for _, y in flat) for end in (min, max))
        room = WIDTH - 2 * MARGIN, MOST_HEIGHT - 2 * MARGIN
        scale = min(room[0] / max(east - west, 1), room[1] / max(north - south, 1))
        return cls(
            local=local,
            scale=scale,
            left=(WIDTH - scale * (west + east)) / 2,
            top=MARGIN + scale * north,
            height=scale * (north - south) + 2 * MARGIN,
        )

    def ring(self, ring: Ring) -> Ring:
        """A ring as it is drawn: across from the left, down from the top."""
        return tuple(
            (self.left + self.scale * x, self.top - self.scale * y)
            for x, y in self.local.ring(ring)
        )

    def rings(self, polygons: Polygons) -> tuple[Ring, ...]:
        """Every ring of a piece of land, holes among them."""
        return tuple(self.ring(ring) for polygon in polygons for ring in polygon)


def path(rings: Iterable[Ring]) -> str:
    """The rings as one path, fine enough to be measured on the drawing."""
    return " ".join(
        "M" + "L".join(f"{x:.3f},{y:.3f}" for x, y in _seen(ring)) + "Z"
        for ring in rings
    )


def _seen(ring: Ring) -> Sequence[tuple[float, float]]:
    corners = [ring[0]]
    for corner in ring[1:-1]:
        if math.dist(corner, corners[-1]) >= NEAREST:
            corners.append(corner)
    return corners if len(corners) > 2 else ring[:-1]
