"""Fields as RFC 7946 writes them: longitude first, WGS 84, no reference system."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import Any

from farm import outlines
from farm.models import Field


def collection(fields: Iterable[Field]) -> dict[str, Any]:
    """Every field that has an outline, with what a map says of it."""
    return {"type": "FeatureCollection", "features": list(_features(fields))}


def _features(fields: Iterable[Field]) -> Iterator[dict[str, Any]]:
    for field in fields:
        outline = outlines.as_kept(field.outline)
        if outline is not None:
            yield {
                "type": "Feature",
                "geometry": outline.as_geojson(),
                "properties": {
                    "name": field.name,
                    "kind": field.kind,
                    "area_m2": round(field.area_m2, 2),
                    "status": field.status,
                },
            }
