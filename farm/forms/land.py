"""The farm, its fields and what was on them before."""

from __future__ import annotations

from typing import Any, ClassVar

from django import forms
from django.utils.translation import gettext_lazy as _

from farm import outlines
from farm.forms.base import ModelForm, RecordForm
from farm.forms.measures import AreaField, LengthField
from farm.forms.names import named
from farm.forms.outlines import OutlineField, OutlineFileField, OutlineMedia
from farm.models import Edge, Farm, Field, LandStatement
from farm.outlines import Outline


class FarmForm(ModelForm[Farm]):
    prices_are_in_it = forms.BooleanField(
        label=_("The prices already written down are in this money"),
        required=False,
        help_text=_("Asked for when the money is changed: nothing is converted."),
    )

    class Meta:
        model = Farm
        fields = [
            "name",
            "operator",
            "address",
            "family",
            "country",
            "latitude",
            "longitude",
            "time_zone",
            "units",
            "currency",
            "standard",
            "certifier",
            "certificate_number",
            "season_first_month",
            "cool_springs",
        ]
        widgets: ClassVar = {
            "address": forms.Textarea(attrs={"rows": 3}),
            "family": forms.Textarea(attrs={"rows": 2}),
        }

    field_order = (*Meta.fields[:10], "prices_are_in_it")

    def __init__(self, *args: Any, **options: Any) -> None:
        super().__init__(*args, **options)
        if self.instance.pk is None:
            del self.fields["prices_are_in_it"]

    def clean_name(self) -> str:
        return named(self.cleaned_data["name"])

    def clean_currency(self) -> str:
        kept: str = self.initial.get("currency", "")
        return self.cleaned_data["currency"] or kept

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean() or self.cleaned_data
        kept, told = self.initial.get("currency"), cleaned.get("currency")
        if kept and told and told != kept and not cleaned.get("prices_are_in_it"):
            sentence = _("Prices are written down in %(kept)s. Tick this, or keep it.")
            self.add_error("prices_are_in_it", sentence % {"kept": kept})
        return cleaned


class FieldForm(RecordForm[Field]):
    area = AreaField(
        label=_("Area"),
        required=False,
        help_text=_("Such as 1.5 ac, 0.6 ha, 900 sq ft or 30 x 4 ft."),
    )
    length_m = LengthField(label=_("Length"), required=False)
    width_m = LengthField(label=_("Width"), required=False)
    outline_text = OutlineField(
        label=_("Outline"),
        required=False,
        help_text=_(
            "Type the corners in order around the land, one a line, latitude first: "
            "40.1234, -101.5678. Or paste GeoJSON or KML."
        ),
    )
    outline_file = OutlineFileField(
        label=_("Outline from a file"),
        required=False,
        help_text=_("GeoJSON or KML. It takes the place of what the box above holds."),
    )

    class Media(OutlineMedia):
        pass

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
        "outline_file",
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
        self._see_from_the_farm()
        if self.instance.pk:
            parents: Any = self.fields["parent"]
            below = [self.instance.pk, *descendants(self.instance)]
            parents.queryset = parents.queryset.exclude(pk__in=below)

    def _see_from_the_farm(self) -> None:
        """Let the boxes notice coordinates exchanged by where the farm lies."""
        if self.farm.latitude is None or self.farm.longitude is None:
            return
        for name in ("outline_text", "outline_file"):
            box: Any = self.fields[name]
            box.near = (self.farm.latitude, self.farm.longitude)

    def _outline(self, cleaned: dict[str, Any]) -> Outline | None:
        """The outline of the file, which the box then shows, or else of the box."""
        sent: Outline | None = cleaned.get("outline_file")
        if sent is None:
            return cleaned.get("outline_text")
        typed: Any = self.data.copy()  # type: ignore[attr-defined]
        typed[self.add_prefix("outline_text")] = shown(sent)
        self.data = typed
        self.errors.pop("outline_text", None)
        return sent

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean()
        outline = self._outline(cleaned)
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


def as_typed(row: Field) -> dict[str, Any]:
    """What the boxes of a field already written down show."""
    return {
        "area": row.area_m2 if row.measured == Field.Measured.ENTERED else None,
        "outline_text": kept_outline(row),
        "length_m": row.length_m,
        "width_m": row.width_m,
    }


def kept_outline(row: Field) -> str:
    """What is kept, as its box shows it; whatever it is, it is not lost."""
    outline = outlines.as_kept(row.outline)
    if outline is None:
        return outlines.as_text(row.outline) if row.outline else ""
    return shown(outline)


def shown(outline: Outline) -> str:
    """An outline as its box shows it: as corners where it is a single ring."""
    return outlines.as_corners(outline) or outlines.as_text(outline.as_geojson())


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
