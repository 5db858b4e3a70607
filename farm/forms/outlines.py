"""Form fields that take an outline, pasted, typed, walked or sent as a file."""

from __future__ import annotations

from typing import Any, ClassVar

from django import forms
from django.core.exceptions import ValidationError
from django.utils.translation import gettext_lazy as _

from farm import outlines
from farm.forms.crooked import crooked, sound
from farm.outlines import Outline, OutlineError

MOST_CHARACTERS = 1_000_000
MOST_BYTES = 2_000_000

# Read by walk.js, which adds the button only where the place can be asked for.
WALK_WORDS = {
    "data-walk": _("Add the place where I stand"),
    "data-walk-asking": _("Asking for the place…"),
    "data-walk-added": _("Corner {n} added, known to within {m} m ({ft} ft)."),
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
