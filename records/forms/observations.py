"""What was seen, and what was cut and weighed."""

from __future__ import annotations

from typing import Any

from django import forms
from django.utils.translation import gettext_lazy as _

from farm.forms.base import RecordForm
from farm.forms.measures import AreaField, LengthField, MassField, PercentField
from records.forms.choices import PlantingChoice
from records.forms.rows import RowForm, RowsForm
from records.models import BiomassSample, Observation, SampleFrame

BEFORE_SOWN = _("The planting was not yet sown on that day.")
NEEDED = {
    Observation.Seen.CANOPY: ("canopy_share", _("Say how much the canopy covers.")),
    Observation.Seen.BLOOM: ("bloom_share", _("Say how much is in bloom.")),
    Observation.Seen.WEEDS: ("weeds", _("Give the weeds a number.")),
}


class ObservationForm(RecordForm[Observation]):
    HAPPENED = ("seen_on",)

    planting = PlantingChoice(label=_("Planting"))
    canopy_share = PercentField(label=_("Canopy, % of the ground"), required=False)
    bloom_share = PercentField(label=_("Plants in bloom, %"), required=False)
    ground_cover_share = PercentField(
        label=_("Ground covered by leaf and residue, %"), required=False
    )
    height_m = LengthField(label=_("Height"), required=False)

    class Meta:
        model = Observation
        fields = [
            "planting",
            "seen_on",
            "seen",
            "canopy_share",
            "bloom_share",
            "ground_cover_share",
            "height_m",
            "weeds",
            "done_by",
            "notes",
        ]

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean()
        planting, day = cleaned.get("planting"), cleaned.get("seen_on")
        if planting and day and day < planting.sown_on:
            self.add_error("seen_on", BEFORE_SOWN)
        needed = NEEDED.get(cleaned.get("seen", ""))
        if needed and cleaned.get(needed[0]) is None and needed[0] not in self.errors:
            self.add_error(*needed)
        return cleaned


class FrameForm(RowForm):
    area_m2 = AreaField(label=_("Frame"), required=False)
    wet_kg = MassField(label=_("Wet weight"), required=False)

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean() or self.cleaned_data
        one, other = cleaned.get("area_m2"), cleaned.get("wet_kg")
        if not self.errors and (one is None) != (other is None):
            self.add_error(
                "wet_kg" if other is None else "area_m2",
                _("A frame needs its area and its weight."),
            )
        return cleaned

    def row(self) -> SampleFrame:
        return SampleFrame(
            area_m2=self.cleaned_data["area_m2"], wet_kg=self.cleaned_data["wet_kg"]
        )


Frames = forms.formset_factory(FrameForm, extra=4, max_num=20, absolute_max=40)


class BiomassSampleForm(RowsForm[BiomassSample]):
    HAPPENED = ("cut_on",)
    ROWS = Frames
    RELATED = "frames"

    planting = PlantingChoice(label=_("Planting"))
    dry_share = PercentField(
        label=_("Dry matter, %"),
        help_text=_("Dry weight of a small part, divided by its wet weight."),
    )
    nitrogen_share = PercentField(
        label=_("Nitrogen in the dry matter, %"), required=False
    )

    class Meta:
        model = BiomassSample
        fields = [
            "planting",
            "cut_on",
            "dry_share",
            "nitrogen_share",
            "laboratory",
            "done_by",
            "notes",
        ]

    def as_initial(self, row: SampleFrame) -> dict[str, Any]:
        return {"area_m2": row.area_m2, "wet_kg": row.wet_kg}

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean()
        planting, day = cleaned.get("planting"), cleaned.get("cut_on")
        if planting and day and day < planting.sown_on:
            self.add_error("cut_on", BEFORE_SOWN)
        if cleaned.get("dry_share") == 0:
            self.add_error("dry_share", _("Dry matter is more than nothing."))
        return cleaned

    def rows_fit(self) -> bool:
        if not self.filled():
            self.add_error(None, _("Write down at least one frame: area and weight."))
        return not self.errors
