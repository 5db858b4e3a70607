"""Outlines of fields: read from GeoJSON, measured on the ellipsoid, written back."""

from farm.outlines.measure import area_m2
from farm.outlines.plane import Ring
from farm.outlines.reading import read_outline
from farm.outlines.shapes import Outline, OutlineError, Trouble, as_text

__all__ = [
    "Outline",
    "OutlineError",
    "Ring",
    "Trouble",
    "area_m2",
    "as_text",
    "read_outline",
]
