"""An outline, and what can be wrong with one."""

from dataclasses import dataclass
from enum import StrEnum

from farm.outlines.plane import Position, Ring, signed_area

# Seven decimals move a one-acre plot by less than 0.02 %, six by up to 0.3 %.
DECIMALS = 7


class Trouble(StrEnum):
    """Why an outline could not be read."""

    EMPTY = "empty"
    TOO_LARGE = "too_large"
    TOO_DEEP = "too_deep"
    TOO_INTRICATE = "too_intricate"
    NOT_JSON = "not_json"
    NOT_KML = "not_kml"
    HAS_DOCTYPE = "has_doctype"
    ZIPPED = "zipped"
    NOT_A_CORNER = "not_a_corner"
    NOT_AN_AREA = "not_an_area"
    NOT_WGS84 = "not_wgs84"
    BAD_POSITION = "bad_position"
    NOT_FINITE = "not_finite"
    NOT_DEGREES = "not_degrees"
    SWAPPED = "swapped"
    SWAPPED_CORNERS = "swapped_corners"
    TOO_FEW = "too_few"
    TOO_FEW_CORNERS = "too_few_corners"
    NOT_CLOSED = "not_closed"
    NO_AREA = "no_area"
    HOLE_OUTSIDE = "hole_outside"


_SENTENCES = {
    Trouble.EMPTY: "There is no outline here.",
    Trouble.TOO_LARGE: "The outline has more than 20,000 corners.",
    Trouble.TOO_DEEP: "The outline is wrapped in too many layers.",
    Trouble.TOO_INTRICATE: "The outline is too intricate to check.",
    Trouble.NOT_JSON: "This is not GeoJSON.",
    Trouble.NOT_KML: "This is not KML.",
    Trouble.HAS_DOCTYPE: "It declares a document type, which is not read here.",
    Trouble.ZIPPED: "This file is packed. Unpack it and take the KML inside.",
    Trouble.NOT_A_CORNER: "A corner is a latitude and a longitude.",
    Trouble.NOT_AN_AREA: "There is no area in it, only points or lines.",
    Trouble.NOT_WGS84: "The coordinates are not longitude and latitude on WGS 84.",
    Trouble.BAD_POSITION: "A position is not a longitude and a latitude.",
    Trouble.NOT_FINITE: "A coordinate is not a number that can be used.",
    Trouble.NOT_DEGREES: "A coordinate is not in degrees.",
    Trouble.SWAPPED: "Longitude and latitude look swapped. Longitude comes first.",
    Trouble.SWAPPED_CORNERS: "The numbers look swapped. Latitude comes first.",
    Trouble.TOO_FEW: "A ring has fewer than four positions.",
    Trouble.TOO_FEW_CORNERS: "An outline has three corners or more.",
    Trouble.NOT_CLOSED: "A ring does not end where it begins.",
    Trouble.NO_AREA: "A ring encloses nothing.",
    Trouble.HOLE_OUTSIDE: "A hole lies outside the area it is cut from.",
}


class OutlineError(ValueError):
    """An outline that could not be read, and the place of the first thing wrong."""

    def __init__(self, reason: Trouble, place: str = "") -> None:
        self.reason = reason
        self.place = place
        sentence = _SENTENCES[reason]
        super().__init__(f"{sentence} Look at {place}." if place else sentence)


@dataclass(frozen=True, slots=True)
class Outline:
    """Polygons as read: each an outer ring, then its holes; longitude first. [°]

    ``crossings`` are the positions where a line really crosses another, which makes
    the area doubtful; lines that only touch are not among them. ``ignored`` counts
    the members of the file that were not areas.
    """

    polygons: tuple[tuple[Ring, ...], ...]
    crossings: tuple[Position, ...] = ()
    ignored: int = 0

    def as_geojson(self) -> dict[str, object]:
        """Return the RFC 7946 geometry: outer rings counter-clockwise, 7 decimals."""
        polygons = [
            [_wound(ring, outer=i == 0) for i, ring in enumerate(polygon)]
            for polygon in self.polygons
        ]
        if len(polygons) == 1:
            return {"type": "Polygon", "coordinates": polygons[0]}
        return {"type": "MultiPolygon", "coordinates": polygons}


def _wound(ring: Ring, *, outer: bool) -> list[list[float]]:
    """Return the ring rounded, counter-clockwise if outer and clockwise if not."""
    turned = ring if (signed_area(ring) > 0) is outer else tuple(reversed(ring))
    # Adding zero turns -0.0 into 0.0.
    return [
        [round(lon, DECIMALS) + 0.0, round(lat, DECIMALS) + 0.0] for lon, lat in turned
    ]
