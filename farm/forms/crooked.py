"""What can be wrong with an outline, in a sentence, and where."""

from __future__ import annotations

from django.core.exceptions import ValidationError
from django.utils.translation import gettext_lazy as _

from farm import outlines
from farm.forms.base import refuse
from farm.outlines import Outline, OutlineError
from farm.outlines import Trouble as Fault

CROOKED = {
    Fault.EMPTY: _("There is no outline here."),
    Fault.TOO_LARGE: _("The outline has more than 20,000 corners."),
    Fault.TOO_DEEP: _("The outline is wrapped in too many layers."),
    Fault.TOO_INTRICATE: _("The outline is too intricate to check."),
    Fault.NOT_JSON: _("This is not GeoJSON."),
    Fault.NOT_KML: _("This is not KML."),
    Fault.HAS_DOCTYPE: _("It declares a document type, which is not read here."),
    Fault.ZIPPED: _("This file is packed. Unpack it and choose the KML inside."),
    Fault.NOT_A_CORNER: _(
        "A corner is a latitude and a longitude, such as 40.1234, -101.5678."
    ),
    Fault.NOT_AN_AREA: _("There is no area in it, only points, lines or the like."),
    Fault.NOT_WGS84: _("The corners are not longitude and latitude on WGS 84."),
    Fault.BAD_POSITION: _("A corner is not a longitude and a latitude."),
    Fault.NOT_FINITE: _("A corner is not a number that can be used."),
    Fault.NOT_DEGREES: _("A corner is not in degrees."),
    Fault.SWAPPED: _(
        "Longitude and latitude look swapped. In GeoJSON and KML longitude comes first."
    ),
    Fault.SWAPPED_CORNERS: _(
        "Latitude and longitude look swapped. In typed corners latitude comes first."
    ),
    Fault.TOO_FEW: _("A ring needs three corners, and the first again at its end."),
    Fault.TOO_FEW_CORNERS: _("An outline needs three corners or more."),
    Fault.NOT_CLOSED: _("A ring is not closed: it must end where it begins."),
    Fault.NO_AREA: _("A ring encloses nothing."),
    Fault.HOLE_OUTSIDE: _("A hole lies outside the area it is cut from."),
}
LOOK_AT = _("%(sentence)s Look at %(place)s.")
CROSSES = _("The outline crosses itself near %(lat)s, %(lon)s (latitude, longitude).")


def sound(text: str, near: tuple[float, float] | None) -> Outline:
    """The outline in the text; what is wrong with it stands beside the box."""
    try:
        outline = outlines.read_any(text, near=near)
    except OutlineError as error:
        raise crooked(error) from error
    if outline.crossings:
        lon, lat = outline.crossings[0]
        raise refuse(CROSSES, lat=f"{lat:.5f}", lon=f"{lon:.5f}")
    return outline


def crooked(error: OutlineError) -> ValidationError:
    """What is wrong with an outline, and where."""
    sentence = CROOKED[error.reason]
    if not error.place:
        return ValidationError(sentence)
    return refuse(LOOK_AT, sentence=sentence, place=error.place)
