"""Outlines read from KML text, as phones and globes on a screen save them."""

import re
from xml.parsers import expat

from farm.outlines.checks import Found, Near, checked, join, legible
from farm.outlines.shapes import Outline, OutlineError, Trouble

_DEEPEST = 100
_NOT_AREAS = {"Point", "LineString", "Track", "Model"}
_BOUNDARIES = {"outerBoundaryIs", "innerBoundaryIs"}
_NUMBER = re.compile(r"[+-]?(\d+(\.\d*)?|\.\d+)([eE][+-]?\d+)?")


def read_kml(text: str, *, near: Near = None) -> Outline:
    """Return the outline written in ``text``.

    Parameters
    ----------
    text : str
        KML with at least one Polygon, alone, in a Placemark or in a MultiGeometry;
        inner boundaries are holes. Any KML namespace or none; heights are left.
    near : tuple of float, optional
        (latitude, longitude) of the farm, as for ``read_outline``. [°]

    Returns
    -------
    Outline
        At most 20,000 positions in 1,000 rings.

    Raises
    ------
    OutlineError
        With the reason and the place of the first thing wrong. A document type, and
        so every entity of a file's own, is refused; nothing is fetched.

    Notes
    -----
    OGC 12-007r2, KML 2.3, sections 10 (geometries) and 16 (coordinates).
    """
    plain = legible(text)
    geometries = _Geometries()
    parser = expat.ParserCreate(namespace_separator=" ")
    parser.StartDoctypeDeclHandler = _refuse_doctype
    parser.StartElementHandler = geometries.start
    parser.EndElementHandler = geometries.end
    parser.CharacterDataHandler = geometries.data
    try:
        parser.Parse(plain.strip(), True)
    except expat.ExpatError as error:
        place = f"line {error.lineno}, column {error.offset + 1}"
        raise OutlineError(Trouble.NOT_KML, place) from None
    return checked(geometries.found, near)


def _refuse_doctype(*declared: object) -> None:
    raise OutlineError(Trouble.HAS_DOCTYPE)


class _Geometries:
    """What the parser has passed: polygons with their places, and what is no area."""

    def __init__(self) -> None:
        self.found: list[Found] = []
        self.path: list[str] = []
        self.placemarks = 0
        self.part = 0
        self.outer: list[object] = []
        self.holes: list[object] = []
        self.told: list[str] | None = None

    def start(self, name: str, attributes: object) -> None:
        tag = name.rpartition(" ")[2]
        self.path.append(tag)
        if len(self.path) > _DEEPEST:
            raise OutlineError(Trouble.TOO_DEEP)
        if tag == "Placemark":
            self.placemarks, self.part = self.placemarks + 1, 0
        elif tag == "Polygon":
            self.part, self.outer, self.holes = self.part + 1, [], []
        elif tag in _NOT_AREAS:
            self.found.append((None, self.place))
        elif tag == "coordinates" and self.boundary:
            self.told = []

    def end(self, name: str) -> None:
        tag = self.path.pop()
        if tag == "coordinates" and self.told is not None:
            ring = _positions("".join(self.told))
            (self.outer if self.boundary == "outerBoundaryIs" else self.holes).append(
                ring
            )
            self.told = None
        elif tag == "Polygon":
            if len(self.outer) != 1:
                raise OutlineError(Trouble.NOT_AN_AREA, self.place)
            self.found.append(([*self.outer, *self.holes], self.place))

    def data(self, text: str) -> None:
        if self.told is not None:
            self.told.append(text)

    @property
    def boundary(self) -> str:
        """The nearest boundary that what is read now lies in, if any."""
        around = (tag for tag in reversed(self.path) if tag in _BOUNDARIES)
        return next(around, "") if "Polygon" in self.path else ""

    @property
    def place(self) -> str:
        area = f"area {self.placemarks}" if self.placemarks else ""
        return join(area, f"part {self.part}" if self.part > 1 else "")


def _positions(text: str) -> list[object]:
    """Return the positions of one ring; what is no number is left to the check."""
    # A space beside a comma is against the standard, and common.
    spaced = " ".join(text.split()).replace(" ,", ",").replace(", ", ",")
    return [[_number(part) for part in one.split(",")[:3]] for one in spaced.split()]


def _number(text: str) -> object:
    return float(text) if _NUMBER.fullmatch(text) else text
