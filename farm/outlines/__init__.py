"""Outlines of fields: read from text, measured on the ellipsoid, written back."""

from farm.outlines.corners import read_corners
from farm.outlines.keeping import as_corners, as_kept, as_text
from farm.outlines.kml import read_kml
from farm.outlines.local import Local, local_to
from farm.outlines.measure import area_m2
from farm.outlines.plane import Ring
from farm.outlines.reading import read_outline
from farm.outlines.shapes import Outline, OutlineError, Trouble
from farm.outlines.sharing import sharing
from farm.outlines.typed import decoded, read_any

__all__ = [
    "Local",
    "Outline",
    "OutlineError",
    "Ring",
    "Trouble",
    "area_m2",
    "as_corners",
    "as_kept",
    "as_text",
    "decoded",
    "local_to",
    "read_any",
    "read_corners",
    "read_kml",
    "read_outline",
    "sharing",
]
