"""Plane geometry in degrees, good for which side and which way round, not for area."""

Position = tuple[float, float]
Ring = tuple[Position, ...]

# About a tenth of a millimetre on the ground; closer counts as touching.
TOUCH_DEG = 1e-9


def unrolled(ring: Ring, lon: float) -> Ring:
    """Return the ring with longitudes within 180° of ``lon``, across the date line."""
    return tuple(((x - lon + 180.0) % 360.0 - 180.0 + lon, y) for x, y in ring)


def signed_area(ring: Ring) -> float:
    """Return the plane area [deg²], above zero when counter-clockwise."""
    lon, lat = ring[0]
    near = [(x - lon, y - lat) for x, y in unrolled(ring, lon)]
    return sum(
        (x1 * y2 - x2 * y1) / 2
        for (x1, y1), (x2, y2) in zip(near, near[1:], strict=False)
    )


def circles_pole(ring: Ring) -> bool:
    """Tell whether the ring goes once round the Earth."""
    lons = [x for x, _ in ring]
    steps = zip(lons, lons[1:], strict=False)
    return abs(sum((b - a + 180.0) % 360.0 - 180.0 for a, b in steps)) > 180.0


def side(a: Position, b: Position, point: Position) -> int:
    """Return 1 when ``point`` is left of a to b, -1 when right, 0 when on the line."""
    dx, dy = b[0] - a[0], b[1] - a[1]
    cross = dx * (point[1] - a[1]) - dy * (point[0] - a[0])
    if abs(cross) <= TOUCH_DEG * max(abs(dx), abs(dy)):
        return 0
    return 1 if cross > 0 else -1


def inside(point: Position, ring: Ring) -> bool | None:
    """Tell whether ``point`` is within the ring; None when it is on the line."""
    x, y = point
    within = False
    for a, b in zip(ring, ring[1:], strict=False):
        if _between(point, a, b) and side(a, b, point) == 0:
            return None
        if (a[1] > y) != (b[1] > y):
            within ^= x < a[0] + (y - a[1]) / (b[1] - a[1]) * (b[0] - a[0])
    return within


def _between(point: Position, a: Position, b: Position) -> bool:
    """Tell whether ``point`` is in the box spanned by a and b, give or take a touch."""
    return all(
        min(a[i], b[i]) - TOUCH_DEG <= point[i] <= max(a[i], b[i]) + TOUCH_DEG
        for i in (0, 1)
    )
