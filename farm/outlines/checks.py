"""What every outline must hold, whatever it was written in."""

import math
from collections.abc import Sequence

from farm.outlines.crossings import crossings, unrolled_rings
from farm.outlines.measure import distance_m
from farm.outlines.plane import Position, Ring, circles_pole, inside, side, unrolled
from farm.outlines.shapes import Outline, OutlineError, Trouble

MOST_CHARACTERS = 5_000_000
_MOST_POSITIONS = 20_000
_MOST_RINGS = 1_000
_NEAR_M = 500_000.0

# The rings of a polygon as they were read, or None for what is no area, and its place.
Found = tuple[list[object] | None, str]
Near = tuple[float, float] | None


def legible(text: str) -> str:
    """Return the text without its byte-order mark, if it may be read at all."""
    if len(text) > MOST_CHARACTERS:
        raise OutlineError(Trouble.TOO_LARGE)
    plain = text.lstrip("\ufeff")
    if not plain.strip():
        raise OutlineError(Trouble.EMPTY)
    return plain


def checked(found: Sequence[Found], near: Near) -> Outline:
    """Return the outline made of everything found that is an area."""
    areas = [(coordinates, place) for coordinates, place in found if coordinates]
    if not areas:
        raise OutlineError(Trouble.NOT_AN_AREA)
    _check_size(areas)
    polygons = tuple(_polygon(coordinates, place) for coordinates, place in areas)
    if near is not None:
        _check_near(polygons[0][0][0], near)
    return Outline(
        polygons=polygons,
        crossings=crossings(unrolled_rings(polygons)),
        ignored=len(found) - len(areas),
    )


def _check_size(areas: list[tuple[list[object], str]]) -> None:
    rings = [ring for polygon, _ in areas for ring in polygon]
    positions = sum(len(ring) for ring in rings if isinstance(ring, list))
    if len(rings) > _MOST_RINGS or positions > _MOST_POSITIONS:
        raise OutlineError(Trouble.TOO_LARGE)


def _polygon(coordinates: list[object], place: str) -> tuple[Ring, ...]:
    """Return an outer ring and its holes, each of them checked."""
    places = [join(place, f"ring {i}") for i in range(1, len(coordinates) + 1)]
    outer, *holes = map(_ring, coordinates, places)
    for hole, where in zip(holes, places[1:], strict=True):
        if not _holds(outer, hole):
            raise OutlineError(Trouble.HOLE_OUTSIDE, where)
    return (outer, *holes)


def _ring(coordinates: object, place: str) -> Ring:
    """Return a closed ring of at least four positions that encloses something."""
    positions = listed(coordinates, place)
    ring = tuple(
        _position(position, join(place, f"position {i}"))
        for i, position in enumerate(positions, 1)
    )
    if len(ring) < 4:
        raise OutlineError(Trouble.TOO_FEW, place)
    if ring[0] != ring[-1]:
        raise OutlineError(Trouble.NOT_CLOSED, place)
    if _straight(ring) and not circles_pole(ring):
        raise OutlineError(Trouble.NO_AREA, place)
    return ring


def _straight(ring: Ring) -> bool:
    """Tell whether every corner lies on one line."""
    flat = unrolled(ring, ring[0][0])
    far = max(flat, key=lambda corner: math.dist(flat[0], corner))
    return all(side(flat[0], far, corner) == 0 for corner in flat)


def _position(value: object, place: str) -> Position:
    """Return longitude and latitude; a height after them is left behind."""
    if not isinstance(value, list) or len(value) < 2:
        raise OutlineError(Trouble.BAD_POSITION, place)
    lon, lat = (_degrees(number, place) for number in value[:2])
    if abs(lat) > 90 and abs(lat) <= 180 and abs(lon) <= 90:
        raise OutlineError(Trouble.SWAPPED, place)
    if abs(lat) > 90 or abs(lon) > 180:
        raise OutlineError(Trouble.NOT_DEGREES, place)
    return (lon, lat)


def _degrees(number: object, place: str) -> float:
    if isinstance(number, bool) or not isinstance(number, int | float):
        raise OutlineError(Trouble.BAD_POSITION, place)
    try:
        degrees = float(number)
    except OverflowError:
        raise OutlineError(Trouble.NOT_FINITE, place) from None
    if not math.isfinite(degrees):
        raise OutlineError(Trouble.NOT_FINITE, place)
    return degrees


def _holds(outer: Ring, hole: Ring) -> bool:
    """Tell whether the first corner of the hole that is off the line is within."""
    lon = outer[0][0]
    around = unrolled(outer, lon)
    answers = (inside(corner, around) for corner in unrolled(hole, lon))
    return next((answer for answer in answers if answer is not None), True)


def _check_near(corner: Position, near: tuple[float, float]) -> None:
    """Refuse an outline that would only be near the farm with its numbers exchanged."""
    lon, lat = corner
    far = distance_m(near, (lat, lon)) > _NEAR_M
    if far and abs(lon) <= 90 and distance_m(near, (lon, lat)) <= _NEAR_M:
        raise OutlineError(Trouble.SWAPPED)


def join(*places: str) -> str:
    return ", ".join(place for place in places if place)


def listed(value: object, place: str) -> list[object]:
    if not isinstance(value, list) or not value:
        raise OutlineError(Trouble.NOT_AN_AREA, place)
    return value
