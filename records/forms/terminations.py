"""Ending a stand: when, how, and what becomes of the residue."""

from __future__ import annotations

from typing import Any

from django.db.models import Sum
from django.utils.translation import gettext_lazy as _

from farm.forms.base import RecordForm
from farm.forms.measures import AreaField, DepthField, PercentField
from records.forms.choices import PlantingChoice
from records.models import Planting, Termination

WORKS_IN = {Termination.Method.TILLED_IN}
KILLS = {
    Termination.Method.FROST_KILLED,
    Termination.Method.TILLED_IN,
    Termination.Method.TARPED,
    Termination.Method.SPRAYED,
}


class TerminationForm(RecordForm[Termination]):
    HAPPENED = ("ended_on", "worked_in_on", "tarp_removed_on")

    planting = PlantingChoice(label=_("Planting"))
    area_m2 = AreaField(
        label=_("Area ended"),
        required=False,
        help_text=_("Leave empty for all that still stands."),
    )
    bloom_share = PercentField(label=_("Plants in bloom, %"), required=False)
    depth_m = DepthField(label=_("Depth worked"), required=False)

    class Meta:
        model = Termination
        fields = [
            "planting",
            "ended_on",
            "method",
            "outcome",
            "area_m2",
            "bloom_share",
            "residue",
            "reason",
            "worked_in_on",
            "depth_m",
            "tool",
            "tarp_removed_on",
            "done_by",
            "notes",
        ]

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean()
        planting, day = cleaned.get("planting"), cleaned.get("ended_on")
        if planting and day and day < planting.sown_on:
            self.add_error("ended_on", _("It ended before it was sown."))
        self._fill_worked_in(cleaned)
        method, outcome = cleaned.get("method"), cleaned.get("outcome")
        if method in KILLS and outcome == Termination.Outcome.REGROWS:
            self.add_error("outcome", _("A stand ended this way does not grow back."))
        if planting:
            self._fit_area(planting, cleaned)
        return cleaned

    def _fill_worked_in(self, cleaned: dict[str, Any]) -> None:
        """Tilling in works the residue in on the same day, unless said otherwise."""
        worked_in = cleaned.get("residue") == Termination.Residue.WORKED_IN
        if cleaned.get("method") in WORKS_IN and not worked_in:
            self.add_error("residue", _("Tilled in means worked in."))
        if worked_in and not cleaned.get("worked_in_on"):
            cleaned["worked_in_on"] = cleaned.get("ended_on")
        day, end = cleaned.get("worked_in_on"), cleaned.get("ended_on")
        if day and end and day < end:
            self.add_error("worked_in_on", _("It was worked in before it ended."))

    def _fit_area(self, planting: Planting, cleaned: dict[str, Any]) -> None:
        left = planting.area_m2 - self._already_ended(planting)
        area = cleaned.get("area_m2")
        if area is None and "area_m2" not in self.errors:
            cleaned["area_m2"] = area = left
        if area is not None and (left <= 0 or area > left + planting.area_m2 * 0.005):
            self.add_error("area_m2", _("Not so much of the planting still stands."))

    def _already_ended(self, planting: Planting) -> float:
        ends = planting.terminations.filter(voided_at=None, outcome="ended")
        if self.instance.pk:
            ends = ends.exclude(pk=self.instance.pk)
        ended: float = ends.aggregate(all=Sum("area_m2"))["all"] or 0.0
        return ended
