"""Where the lines of an outline cross one another."""

import math
from collections import defaultdict
from collections.abc import Iterable, Iterator
from itertools import combinations
from typing import NamedTuple

from farm.outlines.plane import TOUCH_DEG, Position, Ring, side, unrolled
from farm.outlines.shapes import OutlineError, Trouble

_MOST_SHOWN = 20
_MOST_PAIRS = 1_000_000
# Fields run north and east more often than not; a sweep aslant keeps the many short
# lines of one straight edge from overlapping.
_ASLANT = (math.cos(0.6), math.sin(0.6))


class _Line(NamedTuple):
    """One side of a ring, with the corner that follows it and the box around it."""

    start: Position
    end: Position
    then: Position
    west: float
    east: float
    south: float
    north: float


def _line(start: Position, end: Position, then: Position) -> _Line:
    west, east = sorted((start[0], end[0]))
    south, north = sorted((start[1], end[1]))
    return _Line(start, end, then, west, east, south, north)


class _Pass(NamedTuple):
    """A ring going through one of its corners."""

    came: Position
    went: Position


def crossings(rings: Iterable[Ring]) -> tuple[Position, ...]:
    """Return where lines really cross, first ones first, at most twenty.

    Lines that meet at a corner, or run along one another, only touch: outlines drawn
    on a grid of pixels do that, and their area is sound. Where a line passes through
    a corner to the other side, it crosses.

    Raises
    ------
    OutlineError
        With ``TOO_INTRICATE`` when there is more to compare than is reasonable.
    """
    corners = [_corners(ring) for ring in rings]
    lines = [
        _line(ring[i - 1], ring[i], ring[(i + 1) % len(ring)])
        for ring in corners
        for i in range(len(ring))
    ]
    found: dict[Position, None] = {}
    for place in [*_at_sides(lines), *_at_corners(corners)]:
        lon = (place[0] + 180.0) % 360.0 - 180.0
        found[round(lon, 9), round(place[1], 9)] = None
    return tuple(sorted(found)[:_MOST_SHOWN])


def _corners(ring: Ring) -> Ring:
    """Return the corners of a closed ring, each once."""
    return tuple(b for a, b in zip(ring, ring[1:], strict=False) if a != b)


def _at_sides(lines: list[_Line]) -> Iterator[Position]:
    """Sweep across and compare only the lines that overlap in its direction."""
    pairs = 0
    active: list[tuple[float, _Line]] = []
    swept = sorted(((_sweep(line), line) for line in lines), key=lambda one: one[0])
    for (low, high), line in swept:
        active = [one for one in active if one[0] >= low]
        pairs += len(active)
        if pairs > _MOST_PAIRS:
            raise OutlineError(Trouble.TOO_INTRICATE)
        for _, other in active:
            if _near(line, other) and (place := _crossing(line, other)):
                yield place
        active.append((high, line))


def _sweep(line: _Line) -> tuple[float, float]:
    """Return how far along the sweep the line starts and ends."""
    one, other = (
        corner[0] * _ASLANT[0] + corner[1] * _ASLANT[1]
        for corner in (line.start, line.end)
    )
    return min(one, other), max(one, other)


def _near(one: _Line, other: _Line) -> bool:
    """Tell whether the boxes around two lines overlap and they share no corner."""
    return (
        one.south <= other.north
        and one.north >= other.south
        and one.west <= other.east
        and one.east >= other.west
        and one.start not in other[:2]
        and one.end not in other[:2]
    )


def _crossing(one: _Line, other: _Line) -> Position | None:
    """Return where two lines cross that share no corner."""
    starts = side(other.start, other.end, one.start)
    ends = side(other.start, other.end, one.end)
    others = (
        side(one.start, one.end, other.start),
        side(one.start, one.end, other.end),
    )
    if starts * ends < 0 and others[0] * others[1] < 0:
        return _meeting(one, other)
    if ends == 0 and others[0] * others[1] < 0:
        return _through(starts, one, other)
    if others[1] == 0 and starts * ends < 0:
        return _through(others[0], other, one)
    return None


def _through(came: int, path: _Line, wall: _Line) -> Position | None:
    """Return the corner of ``path`` on ``wall`` if the path goes on beyond it."""
    went = side(wall.start, wall.end, path.then)
    return path.end if came * went < 0 else None


def _meeting(one: _Line, other: _Line) -> Position:
    """Return the point common to two lines known to cross."""
    (x1, y1), (x2, y2) = one.start, one.end
    (x3, y3), (x4, y4) = other.start, other.end
    over = (x3 - x1) * (y4 - y3) - (y3 - y1) * (x4 - x3)
    share = over / ((x2 - x1) * (y4 - y3) - (y2 - y1) * (x4 - x3))
    return (x1 + share * (x2 - x1), y1 + share * (y2 - y1))


def _at_corners(rings: list[Ring]) -> Iterator[Position]:
    """Yield corners visited twice where one visit passes through the other."""
    visits: dict[Position, list[_Pass]] = defaultdict(list)
    for ring in rings:
        for i, corner in enumerate(ring):
            visits[corner].append(_Pass(ring[i - 1], ring[(i + 1) % len(ring)]))
    if sum(len(passes) ** 2 for passes in visits.values()) > _MOST_PAIRS:
        raise OutlineError(Trouble.TOO_INTRICATE)
    for corner, passes in visits.items():
        if any(_pass_through(corner, a, b) for a, b in combinations(passes, 2)):
            yield corner


def _pass_through(corner: Position, one: _Pass, other: _Pass) -> bool:
    """Tell whether ``other`` comes from one side of ``one`` and leaves on the other."""
    whole = 2 * math.pi
    start = _heading(corner, one.came)
    width, first, last = (
        (_heading(corner, p) - start) % whole
        for p in (one.went, other.came, other.went)
    )
    along = (0.0, width, whole)
    if any(abs(turn - edge) < TOUCH_DEG for turn in (first, last) for edge in along):
        return False
    return (first < width) is not (last < width)


def _heading(corner: Position, to: Position) -> float:
    return math.atan2(to[1] - corner[1], to[0] - corner[0])


def unrolled_rings(polygons: Iterable[tuple[Ring, ...]]) -> list[Ring]:
    """Return every ring, moved to one side of the date line."""
    rings = [ring for polygon in polygons for ring in polygon]
    return [unrolled(ring, rings[0][0][0]) for ring in rings]
