"""Which outlines lie on the same ground."""

from collections.abc import Collection, Iterable, Mapping
from itertools import combinations, pairwise

from farm.outlines.local import local_to
from farm.outlines.plane import Ring
from farm.outlines.shapes import Outline

# Lines drawn by hand run a little over their neighbour's: our own choice.
SHARE = 0.05
_ROWS = 48


def sharing(
    outlines: Mapping[int, Outline],
    *,
    share: float = SHARE,
    of: Collection[int] | None = None,
) -> frozenset[tuple[int, int]]:
    """Return the pairs of outlines that lie on the same ground.

    Parameters
    ----------
    outlines : mapping of int to Outline
        By the number of the piece of land.
    share : float, optional
        The part of the smaller outline that must lie within the other. [1]
    of : collection of int, optional
        Only pairs with one of these pieces in them.

    Returns
    -------
    frozenset of (int, int)
        Each pair once, the lower number first.

    Notes
    -----
    Measured along 48 lines across the ground that the two boxes share, corners even
    or odd along each; good to about a fiftieth of the smaller outline.
    """
    rings = {
        key: [ring for polygon in one.polygons for ring in polygon]
        for key, one in outlines.items()
    }
    every = [ring for told in rings.values() for ring in told]
    if not every:
        return frozenset()
    flat = local_to(every)
    laid = {key: list(map(flat.ring, told)) for key, told in rings.items() if told}
    boxes = {key: _box(told) for key, told in laid.items()}
    return frozenset(
        (one, other)
        for one, other in combinations(sorted(laid), 2)
        if (of is None or one in of or other in of)
        and _meet(boxes[one], boxes[other])
        and _shared(laid[one], laid[other], boxes[one], boxes[other]) >= share
    )


Box = tuple[float, float, float, float]


def _box(rings: Iterable[Ring]) -> Box:
    xs, ys = zip(*(corner for ring in rings for corner in ring), strict=True)
    return min(xs), min(ys), max(xs), max(ys)


def _meet(one: Box, other: Box) -> bool:
    return all(one[i] < other[i + 2] and other[i] < one[i + 2] for i in (0, 1))


def _shared(one: list[Ring], other: list[Ring], box: Box, beside: Box) -> float:
    """Return the part of the smaller that lies within the other. [1]"""
    south, north = max(box[1], beside[1]), min(box[3], beside[3])
    both = _measured([one, other], south, north)
    least = min(_measured([one], box[1], box[3]), _measured([other], *beside[1::2]))
    return both / least if least > 0 else 0.0


def _measured(shapes: list[list[Ring]], south: float, north: float) -> float:
    """Return the area that lies within all the shapes. [m²]"""
    step = (north - south) / _ROWS
    rows = (south + (n + 0.5) * step for n in range(_ROWS))
    return step * sum(_along([_spans(rings, y) for rings in shapes]) for y in rows)


def _along(spans: list[list[tuple[float, float]]]) -> float:
    """Return the length along one line that lies within a span of each list. [m]"""
    first, *others = spans
    for more in others:
        first = [(max(a, c), min(b, d)) for a, b in first for c, d in more]
    return sum(max(0.0, b - a) for a, b in first)


def _spans(rings: Iterable[Ring], y: float) -> list[tuple[float, float]]:
    crossed = sorted(
        a[0] + (y - a[1]) / (b[1] - a[1]) * (b[0] - a[0])
        for ring in rings
        for a, b in pairwise(ring)
        if (a[1] > y) != (b[1] > y)
    )
    return list(zip(crossed[::2], crossed[1::2], strict=False))
