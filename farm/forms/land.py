"""The farm, its fields and what was on them before."""

from __future__ import annotations

import json
from typing import Any, ClassVar

from django import forms
from django.core.exceptions import ValidationError
from django.utils.translation import gettext_lazy as _

from farm import outlines
from farm.forms.base import ModelForm, RecordForm, refuse
from farm.forms.measures import AreaField, LengthField
from farm.models import Edge, Farm, Field, LandStatement
from farm.outlines import OutlineError
from farm.outlines import Trouble as Fault

CROOKED = {
    Fault.EMPTY: _("There is no outline here."),
    Fault.TOO_LARGE: _("The outline has more than 20,000 corners."),
    Fault.TOO_DEEP: _("The outline is wrapped in too many layers."),
    Fault.TOO_INTRICATE: _("The outline is too intricate to check."),
    Fault.NOT_JSON: _("This is not GeoJSON."),
    Fault.NOT_AN_AREA: _("There is no area in it, only points, lines or the like."),
    Fault.NOT_WGS84: _("The corners are not longitude and latitude on WGS 84."),
    Fault.BAD_POSITION: _("A corner is not a longitude and a latitude."),
    Fault.NOT_FINITE: _("A corner is not a number that can be used."),
    Fault.NOT_DEGREES: _("A corner is not in degrees."),
    Fault.SWAPPED: _("Longitude and latitude look swapped. Longitude comes first."),
    Fault.TOO_FEW: _("A ring needs three corners, and the first again at its end."),
    Fault.NOT_CLOSED: _("A ring is not closed: it must end where it begins."),
    Fault.NO_AREA: _("A ring encloses nothing."),
    Fault.HOLE_OUTSIDE: _("A hole lies outside the area it is cut from."),
}
LOOK_AT = _("%(sentence)s Look at %(place)s.")


class FarmForm(ModelForm[Farm]):
    class Meta:
        model = Farm
        fields = [
            "name",
            "operator",
            "address",
            "country",
            "latitude",
            "longitude",
            "time_zone",
            "units",
            "standard",
            "certifier",
            "certificate_number",
            "season_first_month",
            "cool_springs",
        ]
        widgets: ClassVar = {"address": forms.Textarea(attrs={"rows": 3})}


class FieldForm(RecordForm[Field]):
    area = AreaField(
        label=_("Area"),
        required=False,
        help_text=_("Such as 1.5 ac, 0.6 ha, 900 sq ft or 30 x 4 ft."),
    )
    length_m = LengthField(label=_("Length"), required=False)
    width_m = LengthField(label=_("Width"), required=False)
    outline_text = forms.CharField(
        label=_("Outline"),
        required=False,
        max_length=1_000_000,
        widget=forms.Textarea(attrs={"rows": 4}),
        help_text=_("GeoJSON of one polygon or several, longitude before latitude."),
    )

    class Meta:
        model = Field
        fields = ["name", "kind", "parent", "status", "status_since", "notes"]

    HAPPENED = ("status_since",)
    field_order = (
        "name",
        "kind",
        "parent",
        "area",
        "length_m",
        "width_m",
        "outline_text",
        "status",
        "status_since",
        "notes",
        "client_key",
    )

    def __init__(self, data: Any = None, **options: Any) -> None:
        row = options.get("instance")
        if row is not None:
            options["initial"] = {**as_typed(row), **(options.get("initial") or {})}
        super().__init__(data, **options)
        if self.instance.pk:
            parents: Any = self.fields["parent"]
            below = [self.instance.pk, *descendants(self.instance)]
            parents.queryset = parents.queryset.exclude(pk__in=below)

    def clean_outline_text(self) -> Any:
        text = self.cleaned_data["outline_text"].strip()
        if not text:
            return None
        near = None
        if self.farm.latitude is not None and self.farm.longitude is not None:
            near = (self.farm.latitude, self.farm.longitude)
        try:
            outline = outlines.read_outline(text, near=near)
        except OutlineError as error:
            raise crooked(error) from error
        if outline.crossings:
            lon, lat = outline.crossings[0]
            raise refuse(
                _("The outline crosses itself near %(lat)s, %(lon)s."),
                lat=f"{lat:.5f}",
                lon=f"{lon:.5f}",
            )
        return outline

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean()
        outline = cleaned.get("outline_text")
        length, width = cleaned.get("length_m"), cleaned.get("width_m")
        row = self.instance
        row.outline = outline.as_geojson() if outline else None
        row.length_m, row.width_m = length, width
        if outline:
            row.area_m2, row.measured = outlines.area_m2(outline), "outline"
        elif length and width:
            row.area_m2, row.measured = length * width, "sides"
        elif cleaned.get("area"):
            row.area_m2, row.measured = cleaned["area"], "entered"
        elif not self.errors:
            self.add_error(
                "area", _("Give an area, a length and a width, or an outline.")
            )
        return cleaned


class LandStatementForm(RecordForm[LandStatement]):
    HAPPENED = ("signed_on", "last_used_on")

    class Meta:
        model = LandStatement
        fields = [
            "field",
            "first",
            "last",
            "substance",
            "last_used_on",
            "signer",
            "signed_on",
            "notes",
        ]


class EdgeForm(RecordForm[Edge]):
    buffer_m = LengthField(label=_("Width of the buffer"), required=False)

    class Meta:
        model = Edge
        fields = ["field", "side", "neighbour", "buffer_m", "barrier", "notes"]


def crooked(error: OutlineError) -> ValidationError:
    """What is wrong with an outline, and where."""
    sentence = CROOKED[error.reason]
    if not error.place:
        return ValidationError(sentence)
    return refuse(LOOK_AT, sentence=sentence, place=error.place)


def as_typed(row: Field) -> dict[str, Any]:
    """What the boxes of a field already written down show."""
    return {
        "area": row.area_m2 if row.measured == Field.Measured.ENTERED else None,
        "outline_text": json.dumps(row.outline) if row.outline else "",
        "length_m": row.length_m,
        "width_m": row.width_m,
    }


def descendants(row: Field) -> list[int]:
    """Every field below this one, so that none becomes its own parent."""
    found: list[int] = []
    layer = [row.pk]
    while layer:
        layer = list(
            Field.objects.filter(parent__in=layer)
            .exclude(pk__in=found)
            .values_list("pk", flat=True)
        )
        found += layer
    return found
