"""Outlines as they are kept, and as they are shown again."""

import json
from collections.abc import Mapping
from typing import Any

from farm.outlines.plane import Ring
from farm.outlines.shapes import DECIMALS, Outline


def as_kept(geojson: Mapping[str, Any] | None) -> Outline | None:
    """Return a stored geometry, checked when it was stored; None where there is none.

    What was stored past the form and is no area counts as none.
    """
    try:
        polygons = (geojson or {})["coordinates"]
        if (geojson or {})["type"] == "Polygon":
            polygons = [polygons]
        return Outline(tuple(tuple(map(_kept, polygon)) for polygon in polygons))
    except (KeyError, TypeError, ValueError):
        return None


def _kept(ring: Any) -> Ring:
    return tuple((float(lon), float(lat)) for lon, lat, *_high in ring)


def as_text(geojson: Mapping[str, object]) -> str:
    """Return a stored geometry as the text that ``read_outline`` reads."""
    return json.dumps(geojson)


def as_corners(outline: Outline) -> str | None:
    """Return a single ring as ``read_corners`` reads it; None for anything more."""
    if len(outline.polygons) != 1 or len(outline.polygons[0]) != 1:
        return None
    ring = outline.polygons[0][0][:-1]
    return "\n".join(f"{lat:.{DECIMALS}f}, {lon:.{DECIMALS}f}" for lon, lat in ring)
