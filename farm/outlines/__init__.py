"""Outlines of fields: read from GeoJSON, measured on the ellipsoid, written back."""

from farm.outlines.measure import area_m2
from farm.outlines.plane import Ring
from farm.outlines.reading import read_outline
from farm.outlines.shapes import Fault, Outline, OutlineError

__all__ = ["Fault", "Outline", "OutlineError", "Ring", "area_m2", "read_outline"]
