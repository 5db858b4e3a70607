"""Form fields that take an outline, pasted, typed, walked or sent as a file."""

from __future__ import annotations

from typing import Any, ClassVar

from django import forms
from django.core.exceptions import ValidationError
from django.utils.translation import gettext_lazy as _

from farm import outlines
from farm.forms.base import refuse
from farm.outlines import Outline, OutlineError
from farm.outlines import Trouble as Fault

MOST_CHARACTERS = 1_000_000
MOST_BYTES = 2_000_000

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

# Read by walk.js, which adds the button only where the place can be asked for.
WALK_WORDS = {
    "data-walk": _("Add the place where I stand"),
    "data-walk-asking": _("Asking for the place…"),
    "data-walk-added": _("Corner {n} added, known to within {m} metres."),
    "data-walk-refused": _("The place may not be asked for. Allow it, or type it."),
    "data-walk-failed": _("The place could not be found. Try under open sky."),
    "data-walk-full": _("An outline stands here already. Empty the box to walk one."),
}


class OutlineField(forms.CharField):
    """Text in any of three shapes, as a sound outline; what was typed stays."""

    near: tuple[float, float] | None = None

    def __init__(self, **options: Any) -> None:
        box = forms.Textarea(attrs={"rows": 4, "spellcheck": "false", **WALK_WORDS})
        super().__init__(max_length=MOST_CHARACTERS, widget=box, **options)

    def clean(self, value: Any) -> Outline | None:
        text = super().clean(value)
        return sound(text, self.near) if text else None


class OutlineFileField(forms.FileField):
    """A GeoJSON or KML file, or one of corners, as a sound outline."""

    near: tuple[float, float] | None = None

    def __init__(self, **options: Any) -> None:
        accept = ".geojson,.json,.kml,.txt"
        box = forms.FileInput(attrs={"accept": accept})
        super().__init__(widget=box, **options)

    def clean(self, data: Any, initial: Any = None) -> Outline | None:
        file = super().clean(data, initial)
        if not file:
            return None
        if file.size > MOST_BYTES:
            raise ValidationError(_("The file is too large to be an outline."))
        try:
            text = outlines.decoded(file.read())
        except OutlineError as error:
            raise crooked(error) from error
        return sound(text, self.near)


class OutlineMedia:
    """The script that walking the corners needs; all else works without."""

    js: ClassVar = [forms.Script("farm/walk.js", type="module")]


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
