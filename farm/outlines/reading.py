"""Outlines read from GeoJSON text."""

import json
import math
from collections.abc import Iterator
from typing import NoReturn

from farm.outlines.crossings import crossings, unrolled_rings
from farm.outlines.measure import distance_m
from farm.outlines.plane import Position, Ring, circles_pole, inside, side, unrolled
from farm.outlines.shapes import Outline, OutlineError, Trouble

_MOST_CHARACTERS = 5_000_000
_MOST_POSITIONS = 20_000
_MOST_RINGS = 1_000
_NEAR_M = 500_000.0
_WGS84 = ("CRS84", "EPSG::4326", "EPSG:4326")
_NOT_AREAS = {"Point", "MultiPoint", "LineString", "MultiLineString"}


def read_outline(text: str, *, near: tuple[float, float] | None = None) -> Outline:
    """Return the outline written in ``text``.

    Parameters
    ----------
    text : str
        GeoJSON: a Polygon, a MultiPolygon, a feature or a collection with at least
        one area; rings wound either way, with or without holes and heights.
    near : tuple of float, optional
        (latitude, longitude) of the farm. An outline more than 500 km away that
        would be closer with its coordinates exchanged is taken to be swapped. [°]

    Returns
    -------
    Outline
        At most 20,000 positions in 1,000 rings.

    Raises
    ------
    OutlineError
        With the reason and the place of the first thing wrong.

    Notes
    -----
    RFC 7946, The GeoJSON Format, sections 3.1.6 (rings) and 4 (reference system).
    """
    try:
        found = list(_polygons(_load(text), ""))
    except RecursionError:
        raise OutlineError(Trouble.TOO_DEEP) from None
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


def _load(text: str) -> object:
    if len(text) > _MOST_CHARACTERS:
        raise OutlineError(Trouble.TOO_LARGE)
    if not text.strip("\ufeff \t\r\n"):
        raise OutlineError(Trouble.EMPTY)
    try:
        return json.loads(text.lstrip("\ufeff"), parse_constant=_refuse_constant)
    except json.JSONDecodeError as error:
        place = f"line {error.lineno}, column {error.colno}"
        raise OutlineError(Trouble.NOT_JSON, place) from None
    except OutlineError:
        raise
    except ValueError:  # a whole number of more digits than Python will read
        raise OutlineError(Trouble.NOT_FINITE) from None


def _refuse_constant(name: str) -> NoReturn:
    raise OutlineError(Trouble.NOT_FINITE, name)


def _polygons(thing: object, place: str) -> Iterator[tuple[list[object] | None, str]]:
    """Yield the rings of every polygon with its place, None for what is no area."""
    if not isinstance(thing, dict):
        raise OutlineError(Trouble.NOT_AN_AREA, place)
    _check_crs(thing, place)
    match thing.get("type"):
        case "FeatureCollection":
            for i, member in enumerate(_listed(thing, "features", place), 1):
                yield from _polygons(member, f"area {i}")
        case "GeometryCollection":
            for i, member in enumerate(_listed(thing, "geometries", place), 1):
                yield from _polygons(member, _join(place, f"part {i}"))
        case "Feature" if thing.get("geometry") is None:
            yield None, place
        case "Feature":
            yield from _polygons(thing["geometry"], place)
        case "Polygon":
            yield _listed(thing, "coordinates", place), place
        case "MultiPolygon":
            for i, rings in enumerate(_listed(thing, "coordinates", place), 1):
                part = _join(place, f"part {i}")
                yield _list(rings, part), part
        case str(kind) if kind in _NOT_AREAS:
            yield None, place
        case _:
            raise OutlineError(Trouble.NOT_AN_AREA, place)


def _check_crs(thing: dict[str, object], place: str) -> None:
    """Refuse the reference system of the older GeoJSON unless it is WGS 84."""
    crs = thing.get("crs")
    if crs is not None and not any(f'{name}"' in json.dumps(crs) for name in _WGS84):
        raise OutlineError(Trouble.NOT_WGS84, place)


def _listed(thing: dict[str, object], member: str, place: str) -> list[object]:
    return _list(thing.get(member), place)


def _list(value: object, place: str) -> list[object]:
    if not isinstance(value, list) or not value:
        raise OutlineError(Trouble.NOT_AN_AREA, place)
    return value


def _join(*places: str) -> str:
    return ", ".join(place for place in places if place)


def _check_size(areas: list[tuple[list[object], str]]) -> None:
    rings = [ring for polygon, _ in areas for ring in polygon]
    positions = sum(len(ring) for ring in rings if isinstance(ring, list))
    if len(rings) > _MOST_RINGS or positions > _MOST_POSITIONS:
        raise OutlineError(Trouble.TOO_LARGE)


def _polygon(coordinates: list[object], place: str) -> tuple[Ring, ...]:
    """Return an outer ring and its holes, each of them checked."""
    places = [_join(place, f"ring {i}") for i in range(1, len(coordinates) + 1)]
    outer, *holes = map(_ring, coordinates, places)
    for hole, where in zip(holes, places[1:], strict=True):
        if not _holds(outer, hole):
            raise OutlineError(Trouble.HOLE_OUTSIDE, where)
    return (outer, *holes)


def _ring(coordinates: object, place: str) -> Ring:
    """Return a closed ring of at least four positions that encloses something."""
    positions = _list(coordinates, place)
    ring = tuple(
        _position(position, _join(place, f"position {i}"))
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
