"""A planting with its seed lines."""

from __future__ import annotations

import datetime as dt
from typing import Any

from django import forms
from django.db.models import Sum
from django.utils.translation import gettext_lazy as _

from farm.forms.measures import AreaField, DepthField, MassField, PercentField
from records.forms.lots import LotChoice
from records.forms.rows import RowForm, RowsForm
from records.models import Kind, Planting, SeedLine, SeedLot

# Shares are typed as whole per cents; three kinds at 33 % each make one mix.
SHARE_SLACK = 0.011
# Scales and rounding: this much of a lot may seem to be missing.
LOT_SLACK_KG = 0.005


class LineForm(RowForm):
    # What is sown, in words, where the boxes that say it are not shown.
    said = ""

    kind = forms.ModelChoiceField(Kind.objects.all(), label=_("Kind"), required=False)
    lot = LotChoice(
        label=_("Seed lot"),
        required=False,
        error_messages={"invalid_choice": _("This lot is not one of the farm’s.")},
    )
    seed_kg = MassField(label=_("Weight sown"), required=False)
    share = PercentField(label=_("Share, %"), required=False, min_value=0)

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean() or self.cleaned_data
        kind, lot = cleaned.get("kind"), cleaned.get("lot")
        if lot and not kind:
            cleaned["kind"] = kind = lot.kind
        if lot and kind and not lot.holds(kind):
            self.add_error("lot", _("This lot is of another kind."))
        weight = cleaned.get("seed_kg")
        if weight is not None and weight <= 0:
            self.add_error("seed_kg", _("A weight sown is more than nothing."))
        if not kind and not self.errors and self.is_filled:
            self.add_error("kind", _("Say which kind, or pick a lot."))
        if cleaned.get("share") == 0:
            self.add_error("share", _("A share of nothing is no line: leave it empty."))
        return cleaned

    def row(self) -> SeedLine:
        line = self.cleaned_data
        return SeedLine(
            kind=line["kind"],
            lot=line["lot"],
            seed_kg=line["seed_kg"],
            share=line["share"],
        )


Lines = forms.formset_factory(LineForm, extra=4, max_num=20, absolute_max=40)


class PlantingForm(RowsForm[Planting]):
    HAPPENED = ("sown_on",)
    ROWS = Lines
    RELATED = "lines"

    area_m2 = AreaField(
        label=_("Area"),
        required=False,
        help_text=_("Leave empty for the whole field."),
    )
    depth_m = DepthField(label=_("Depth"), required=False)

    class Meta:
        model = Planting
        fields = [
            "field",
            "area_m2",
            "purpose",
            "method",
            "sown_on",
            "planned_on",
            "depth_m",
            "firmed",
            "rain_expected",
            "inoculated",
            "next_crop",
            "next_crop_on",
            "next_crop_set",
            "done_by",
            "notes",
        ]

    def as_initial(self, row: SeedLine) -> dict[str, Any]:
        return {
            "kind": row.kind_id,
            "lot": row.lot_id,
            "seed_kg": row.seed_kg,
            "share": row.share,
        }

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean()
        field, area = cleaned.get("field"), cleaned.get("area_m2")
        if field and area is None and "area_m2" not in self.errors:
            cleaned["area_m2"] = area = field.area_m2
        if field and area and area > field.area_m2 * 1.005:
            self.add_error("area_m2", _("This is more than the field has."))
        sown = cleaned.get("sown_on")
        if not sown and not cleaned.get("planned_on") and "sown_on" not in self.errors:
            self.add_error("sown_on", _("Give the day it was sown, or is planned for."))
        start = sown or cleaned.get("planned_on")
        after = cleaned.get("next_crop_on")
        if start and after and after < start:
            self.add_error("next_crop_on", _("The next crop comes before this one."))
        if sown and self.instance.pk:
            self._check_against_events(sown)
        return cleaned

    def _check_against_events(self, sown: dt.date) -> None:
        ends = self.instance.terminations.filter(voided_at=None)
        if ends.filter(ended_on__lt=sown).exists():
            self.add_error("sown_on", _("It was ended before this day."))

    def rows_fit(self) -> bool:
        lines = self.filled()
        if not lines:
            self.add_error(None, _("Say what was sown: a kind, or a seed lot."))
            return False
        self._default_shares(lines)
        total = sum(line.cleaned_data["share"] for line in lines)
        if abs(total - 1) > SHARE_SLACK:
            message = _("The shares of the mix add up to %(sum)s %%, not 100 %%.")
            self.add_error(None, message % {"sum": f"{total * 100:g}"})
        elif total != 1:
            for line in lines:
                line.cleaned_data["share"] /= total
        self._check_lots(lines)
        self._check_twice(lines)
        return not self.errors and not any(line.errors for line in lines)

    def _default_shares(self, lines: list[RowForm]) -> None:
        if len(lines) == 1 and lines[0].cleaned_data["share"] is None:
            lines[0].cleaned_data["share"] = 1.0
        for line in lines:
            if line.cleaned_data["share"] is None:
                line.add_error("share", _("Give each kind of a mix its share."))
                line.cleaned_data["share"] = 0.0

    def _check_twice(self, lines: list[RowForm]) -> None:
        seen = set()
        for line in lines:
            told = (line.cleaned_data["kind"], line.cleaned_data.get("lot"))
            if told in seen:
                line.add_error("lot", _("This seed stands twice: add it up."))
            seen.add(told)

    def _check_lots(self, lines: list[RowForm]) -> None:
        self_sown = self.cleaned_data.get("method") == Planting.Method.SELF_SOWN
        used: dict[int, float] = {}
        for line in lines:
            lot, weight = line.cleaned_data["lot"], line.cleaned_data["seed_kg"]
            if self_sown and (lot or weight):
                line.add_error("lot", _("A self-sown stand uses no seed of a lot."))
            elif lot:
                used[lot.pk] = used.get(lot.pk, 0.0) + (weight or 0.0)
                if used[lot.pk] > self._left_kg(lot) + LOT_SLACK_KG:
                    line.add_error(
                        "seed_kg", _("The lot does not hold this much. Count it first.")
                    )
                received = self.cleaned_data.get("sown_on")
                if received and lot.received_on > received:
                    line.add_error("lot", _("This lot was received after that day."))

    def _left_kg(self, lot: SeedLot) -> float:
        """What the lot holds without this planting."""
        kept = SeedLot.objects.filter(pk=lot.pk).with_balance().get()
        sown, since = self.cleaned_data.get("sown_on"), kept.counted_on or dt.date.min
        left = kept.left_kg
        if sown and sown <= since:
            # A count says nothing of the days before it: there the books hold.
            left, since = kept.received_kg + kept.moved_kg - kept.sown_kg, dt.date.min
        own = SeedLine.objects.filter(
            lot=lot, planting=self.instance.pk, planting__sown_on__gt=since
        )
        drawn: float = own.aggregate(all=Sum("seed_kg"))["all"] or 0.0
        return float(left) + drawn
