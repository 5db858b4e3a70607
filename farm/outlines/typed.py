"""Outlines read from whatever was pasted, typed, walked or sent as a file."""

from farm.outlines.checks import Near, legible
from farm.outlines.corners import read_corners
from farm.outlines.kml import read_kml
from farm.outlines.reading import read_outline
from farm.outlines.shapes import Outline, OutlineError, Trouble


def read_any(text: str, *, near: Near = None) -> Outline:
    """Return the outline in ``text``: GeoJSON, KML or corners, by its first mark.

    Raises
    ------
    OutlineError
        With the reason and the place of the first thing wrong.
    """
    begin = legible(text).lstrip()[0]
    if begin == "<":
        return read_kml(text, near=near)
    if begin in "{[":
        return read_outline(text, near=near)
    return read_corners(text, near=near)


def decoded(content: bytes) -> str:
    """Return the text of a file; what carries the outline is plain ASCII.

    Raises
    ------
    OutlineError
        With ``ZIPPED`` for a file that must be unpacked first.
    """
    if content.startswith(b"PK\x03\x04"):
        raise OutlineError(Trouble.ZIPPED)
    if content.startswith((b"\xff\xfe", b"\xfe\xff")):
        return content.decode("utf-16", errors="replace")
    try:
        return content.decode("utf-8-sig")
    except UnicodeDecodeError:
        return content.decode("latin-1")
