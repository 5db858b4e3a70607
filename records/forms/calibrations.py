"""What a machine dropped on known ground, at a setting."""

from __future__ import annotations

import datetime as dt
from typing import Any

from django.db import transaction
from django.utils.translation import gettext_lazy as _

from farm.forms.base import RecordForm
from farm.forms.measures import AreaField, LengthField, MassField, RateField
from farm.models import User
from farm.writing import write
from records.models import Calibration


class CalibrationForm(RecordForm[Calibration]):
    HAPPENED = ("calibrated_on",)

    caught_kg = MassField(label=_("Seed caught"))
    distance_m = LengthField(label=_("Distance"), required=False)
    row_width_m = LengthField(
        label=_("Row spacing"),
        required=False,
        help_text=_("Leave empty for that of the machine."),
    )
    area_m2 = AreaField(label=_("or area covered"), required=False)
    wanted_kg_m2 = RateField(label=_("Rate wanted"), required=False)

    class Meta:
        model = Calibration
        fields = [
            "equipment",
            "kind",
            "calibrated_on",
            "setting",
            "caught_kg",
            "distance_m",
            "row_width_m",
            "rows",
            "area_m2",
            "wanted_kg_m2",
            "done_by",
            "notes",
        ]

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean()
        machine = cleaned.get("equipment")
        if cleaned.get("distance_m") and machine:
            for name in ("row_width_m", "rows"):
                cleaned[name] = cleaned.get(name) or getattr(machine, name)
                if not cleaned[name] and name not in self.errors:
                    self.add_error(name, _("Over a distance, this is needed too."))
        elif not cleaned.get("area_m2") and "area_m2" not in self.errors:
            self.add_error(
                "distance_m", _("Give a distance with rows, or the area covered.")
            )
        if cleaned.get("distance_m") and cleaned.get("area_m2"):
            self.add_error("area_m2", _("Give a distance or an area, not both."))
        return cleaned

    def record(self, *, by: User, now: dt.datetime) -> Calibration:
        """Keep the setting with the machine too."""
        with transaction.atomic():
            kept = super().record(by=by, now=now)
            machine = kept.equipment
            if machine.setting != kept.setting:
                machine.setting = kept.setting
                write(machine, by=by, now=now)
        return kept
