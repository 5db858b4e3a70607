"""A piece of ground and a few kinds, told by rate, share, weight or number."""

from __future__ import annotations

import datetime as dt
from typing import Any

from django import forms
from django.core.exceptions import ValidationError
from django.utils.translation import gettext_lazy as _

from farm import units
from farm.forms.base import DateInput, offered
from farm.forms.measures import (
    AreaField,
    LengthField,
    MassField,
    PercentField,
    RateField,
)
from farm.models import Farm, Field
from farm.units import System
from records.models import Kind, Planting, SeedLot
from reports.calc.shapes.how_much import ToldBy
from reports.labels.order import TOLD_BY

KINDS = 4
WAYS = ("broadcast", "drilled", "frost_seeded")
FIGURE = _("Its figure")


class HowMuchForm(forms.Form):
    field = forms.ModelChoiceField(
        Field.objects.order_by("name"), label=_("Field or bed"), required=False
    )
    area_m2 = AreaField(label=_("or area"), required=False)
    length_m = LengthField(label=_("or length along the rows"), required=False)
    width_m = LengthField(label=_("by width"), required=False)
    headland_m = LengthField(
        label=_("Headland left at both ends"),
        required=False,
        help_text=_("Taken off the length; give length and width with it."),
    )
    method = forms.ChoiceField(
        label=_("How"),
        choices=[one for one in Planting.Method.choices if one[0] in WAYS],
    )
    on = forms.DateField(label=_("Sown on"), widget=DateInput())
    told_by = forms.ChoiceField(label=_("Each kind is told by"), choices=TOLD_BY.items)
    mix = RateField(label=_("Rate of the whole mix, by weight"), required=False)
    overage = PercentField(label=_("Seed to spare, %"))
    hopper_kg = MassField(label=_("The hopper holds"), required=False)

    def __init__(
        self, data: Any = None, *, farm: Farm, today: dt.date, overage: float
    ) -> None:
        start = {"on": today, "overage": overage, "told_by": ToldBy.RATE.value}
        super().__init__(data, initial=start)
        self.system = System(farm.units)
        for place in range(KINDS):
            self.fields[f"kind{place}"] = _kind_field(place)
            self.fields[f"lot{place}"] = _lot_field()
            self.fields[f"told{place}"] = forms.CharField(
                label=FIGURE, required=False, max_length=40
            )
        for box in self.fields.values():
            if hasattr(box, "system"):
                box.system = self.system
            if isinstance(box, forms.ModelChoiceField):
                box.queryset = offered(box.queryset, farm)

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean() or self.cleaned_data
        sides = cleaned.get("length_m") and cleaned.get("width_m")
        if not (cleaned.get("field") or cleaned.get("area_m2") or sides):
            self.add_error("field", _("Pick a field, or give an area or its sides."))
        if cleaned.get("headland_m") and not sides:
            self.add_error("headland_m", _("Give length and width with it."))
        for place in range(KINDS):
            self._clean_row(cleaned, place)
        if not self.errors and not any(cleaned[f"kind{n}"] for n in range(KINDS)):
            self.add_error("kind0", _("Pick a kind, or a lot."))
        if not self.errors and cleaned["told_by"] == ToldBy.WEIGHT:
            self._check_mix(cleaned)
        return cleaned

    def _clean_row(self, cleaned: dict[str, Any], place: int) -> None:
        kind, lot = cleaned.get(f"kind{place}"), cleaned.get(f"lot{place}")
        if lot and not kind:
            cleaned[f"kind{place}"] = lot.kind
        elif lot and kind and lot.kind_id != kind.pk:
            self.add_error(f"lot{place}", _("This lot is of another kind."))
        try:
            text = cleaned.get(f"told{place}", "").strip()
            told_by = ToldBy(cleaned.get("told_by", ToldBy.RATE))
            cleaned[f"told{place}"] = _figure(text, told_by, self.system)
        except (ValidationError, ValueError):
            self.add_error(f"told{place}", _("This could not be read as a figure."))

    def _check_mix(self, cleaned: dict[str, Any]) -> None:
        if not cleaned["mix"]:
            self.add_error("mix", _("Say what the whole mix is sown at."))
        for place in range(KINDS):
            if cleaned[f"kind{place}"] and not cleaned[f"told{place}"]:
                self.add_error(f"told{place}", _("Give each kind its part by weight."))

    def rows(self) -> list[tuple[Kind, SeedLot | None, float | None]]:
        """Kinds asked for, each with its lot and figure."""
        told = self.cleaned_data
        return [
            (told[f"kind{n}"], told[f"lot{n}"], told[f"told{n}"])
            for n in range(KINDS)
            if told[f"kind{n}"]
        ]

    @property
    def plain_fields(self) -> list[Any]:
        """The boxes that are not of one kind."""
        return [
            box for box in self if not box.name[-1].isdigit() or box.name == "area_m2"
        ]

    @property
    def kind_rows(self) -> list[list[Any]]:
        """The boxes of each kind."""
        names = ("kind", "lot", "told")
        return [[self[f"{name}{n}"] for name in names] for n in range(KINDS)]


def _kind_field(place: int) -> Any:
    words = _("Kind") if place == 0 else _("Next kind")
    return forms.ModelChoiceField(Kind.objects.all(), label=words, required=False)


def _lot_field() -> Any:
    rows = SeedLot.objects.select_related("kind")
    return forms.ModelChoiceField(rows, label=_("Seed lot"), required=False)


def _figure(text: str, told_by: ToldBy, system: System) -> float | None:
    """What is typed for a kind, in SI; None for the middle of the range in print."""
    if not text:
        return None
    if told_by is ToldBy.RATE:
        return RateField(system=system).clean(text) or None
    if told_by is ToldBy.SHARE:
        return PercentField().clean(text) or None
    number = float(text)
    if not 0 < number < 1e7:
        raise ValueError(text)
    is_us_count = told_by is ToldBy.SEEDS and system is System.US
    return number / units.M2_PER_FT2 if is_us_count else number
