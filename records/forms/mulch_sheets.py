"""Laying a film or tarp on the ground, and taking it off."""

from __future__ import annotations

from typing import Any, ClassVar

from django.utils.translation import gettext_lazy as _

from farm.forms.base import RecordForm
from farm.forms.measures import AreaField
from records.forms.choices import PlantingChoice
from records.models import MulchSheet


class MulchSheetForm(RecordForm[MulchSheet]):
    HAPPENED = ("laid_on", "taken_off_on")

    planting = PlantingChoice(
        label=_("Planting"),
        required=False,
        help_text=_("What grew in it; leave empty where nothing did."),
    )
    area_m2 = AreaField(
        label=_("Area covered"),
        required=False,
        help_text=_("Leave empty for the whole field."),
    )

    class Meta:
        model = MulchSheet
        fields = [
            "field",
            "planting",
            "area_m2",
            "material",
            "material_words",
            "approval",
            "laid_on",
            "taken_off_on",
            "went",
            "done_by",
            "notes",
        ]
        help_texts: ClassVar = {
            "material_words": _("Needed where the material is none of these."),
            "taken_off_on": _("Or worked in, where it is of a kind that rots."),
            "approval": _("Who said that it may be used, and where that is written."),
        }

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean()
        field, planting = cleaned.get("field"), cleaned.get("planting")
        if planting and field and planting.field_id != field.pk:
            self.add_error("planting", _("This planting is on another field."))
        if field and cleaned.get("area_m2") is None and "area_m2" not in self.errors:
            cleaned["area_m2"] = field.area_m2
        area = cleaned.get("area_m2")
        if field and area and area > field.area_m2 * 1.005:
            self.add_error("area_m2", _("This is more than the field has."))
        is_other = cleaned.get("material") == MulchSheet.Material.OTHER
        if is_other and not cleaned.get("material_words"):
            self.add_error("material_words", _("Say in words what it is."))
        self._clean_end(cleaned)
        return cleaned

    def _clean_end(self, cleaned: dict[str, Any]) -> None:
        laid, off = cleaned.get("laid_on"), cleaned.get("taken_off_on")
        if laid and off and off < laid:
            self.add_error("taken_off_on", _("It came off before it was laid."))
        if cleaned.get("went") and not off and "taken_off_on" not in self.errors:
            self.add_error("taken_off_on", _("Give the day it was taken off."))
