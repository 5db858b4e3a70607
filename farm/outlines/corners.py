"""Outlines read from corners typed one a line, latitude first as people say it."""

import re

from farm.outlines.checks import Near, checked, legible
from farm.outlines.shapes import Outline, OutlineError, Trouble

_DEGREES = r"([+-]?\d{1,3}(?:\.\d+)?)\s*°?\s*"
_CORNER = re.compile(
    rf"{_DEGREES}([NS]?)(?:\s*[,;]\s*|\s+|(?<=[NS°])){_DEGREES}([EW]?)", re.IGNORECASE
)


def read_corners(text: str, *, near: Near = None) -> Outline:
    """Return the outline whose corners are written in ``text``, in order around it.

    Parameters
    ----------
    text : str
        One corner a line, latitude before longitude in decimal degrees, with a comma,
        a semicolon or a space between: ``40.1234, -101.5678``. N, S, E and W may stand
        for the signs. The last corner is joined to the first.
    near : tuple of float, optional
        (latitude, longitude) of the farm, as for ``read_outline``. [°]

    Raises
    ------
    OutlineError
        With the reason and the line of the first thing wrong.
    """
    lines = enumerate(legible(text).splitlines(), 1)
    corners = [_corner(line, number) for number, line in lines if line.strip()]
    if len({tuple(corner) for corner in corners}) < 3:
        raise OutlineError(Trouble.TOO_FEW_CORNERS)
    if corners[0] != corners[-1]:
        corners.append(corners[0])
    try:
        return checked([([corners], "")], near)
    except OutlineError as error:
        if error.reason is Trouble.SWAPPED:
            raise OutlineError(Trouble.SWAPPED_CORNERS) from None
        raise OutlineError(error.reason) from None


def _corner(line: str, number: int) -> list[float]:
    """Return longitude and latitude, the order of everything further on."""
    place = f"line {number}"
    # In much of the world a comma stands before the decimals, and a semicolon between.
    text = line.replace(",", ".") if ";" in line and "." not in line else line
    found = _CORNER.fullmatch(" ".join(text.split()).rstrip(",;"))
    if found is None:
        raise OutlineError(Trouble.NOT_A_CORNER, place)
    lat = _signed(found[1], found[2], "S", place)
    lon = _signed(found[3], found[4], "W", place)
    if abs(lat) > 90 and abs(lat) <= 180 and abs(lon) <= 90:
        raise OutlineError(Trouble.SWAPPED_CORNERS, place)
    if abs(lat) > 90 or abs(lon) > 180:
        raise OutlineError(Trouble.NOT_DEGREES, place)
    return [lon, lat]


def _signed(degrees: str, letter: str, below: str, place: str) -> float:
    """Return the degrees, below zero for south and west; never both signs at once."""
    if letter and degrees[0] in "+-":
        raise OutlineError(Trouble.NOT_A_CORNER, place)
    return -float(degrees) if letter.upper() == below else float(degrees)
