"""Outlines read from GeoJSON text."""

import json
from collections.abc import Iterator
from typing import NoReturn

from farm.outlines.checks import Found, Near, checked, join, legible, listed
from farm.outlines.shapes import Outline, OutlineError, Trouble

_WGS84 = ("CRS84", "EPSG::4326", "EPSG:4326")
_NOT_AREAS = {"Point", "MultiPoint", "LineString", "MultiLineString"}


def read_outline(text: str, *, near: Near = None) -> Outline:
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
    return checked(found, near)


def _load(text: str) -> object:
    plain = legible(text)
    try:
        return json.loads(plain, parse_constant=_refuse_constant)
    except json.JSONDecodeError as error:
        place = f"line {error.lineno}, column {error.colno}"
        raise OutlineError(Trouble.NOT_JSON, place) from None
    except OutlineError:
        raise
    except ValueError:  # a whole number of more digits than Python will read
        raise OutlineError(Trouble.NOT_FINITE) from None


def _refuse_constant(name: str) -> NoReturn:
    raise OutlineError(Trouble.NOT_FINITE, name)


def _polygons(thing: object, place: str) -> Iterator[Found]:
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
                yield from _polygons(member, join(place, f"part {i}"))
        case "Feature" if thing.get("geometry") is None:
            yield None, place
        case "Feature":
            yield from _polygons(thing["geometry"], place)
        case "Polygon":
            yield _listed(thing, "coordinates", place), place
        case "MultiPolygon":
            for i, rings in enumerate(_listed(thing, "coordinates", place), 1):
                part = join(place, f"part {i}")
                yield listed(rings, part), part
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
    return listed(thing.get(member), place)
