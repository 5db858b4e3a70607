"""Harvest lots, storing them and selling them."""

from __future__ import annotations

from typing import Any

from django.db.models import Sum
from django.utils.translation import gettext_lazy as _

from farm.forms.base import RecordForm
from farm.forms.measures import MassField
from records.forms.choices import PlantingChoice
from records.models import HarvestLot, Sale, Storage

# Scales differ: this share of a lot may seem to be missing.
SLACK = 0.02
BEFORE_HARVEST = _("The lot was not yet harvested on that day.")


class HarvestLotForm(RecordForm[HarvestLot]):
    HAPPENED = ("harvested_on",)

    planting = PlantingChoice(label=_("Planting"), required=False)
    mass_kg = MassField(label=_("Weight"))

    class Meta:
        model = HarvestLot
        fields = [
            "code",
            "field",
            "planting",
            "crop",
            "harvested_on",
            "mass_kg",
            "use",
            "status",
            "from_buffer",
            "touches_soil",
            "done_by",
            "notes",
        ]

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean()
        planting, field = cleaned.get("planting"), cleaned.get("field")
        if planting and field and planting.field_id != field.pk:
            self.add_error("planting", _("This planting is on another field."))
        day = cleaned.get("harvested_on")
        if planting and day and day < planting.sown_on:
            self.add_error("harvested_on", _("It was harvested before it was sown."))
        if cleaned.get("mass_kg") == 0:
            self.add_error("mass_kg", _("A lot weighs more than nothing."))
        return cleaned


class StorageForm(RecordForm[Storage]):
    HAPPENED = ("stored_on",)

    mass_kg = MassField(label=_("Weight"))

    class Meta:
        model = Storage
        fields = ["lot", "stored_on", "place", "mass_kg", "done_by", "notes"]

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean()
        lot, day = cleaned.get("lot"), cleaned.get("stored_on")
        if lot and day and day < lot.harvested_on:
            self.add_error("stored_on", BEFORE_HARVEST)
        if cleaned.get("mass_kg") == 0:
            self.add_error("mass_kg", _("It weighs more than nothing."))
        return cleaned


class SaleForm(RecordForm[Sale]):
    HAPPENED = ("sold_on",)

    mass_kg = MassField(label=_("Weight"))

    class Meta:
        model = Sale
        fields = [
            "lot",
            "sold_on",
            "buyer",
            "mass_kg",
            "status",
            "invoice",
            "transport",
            "done_by",
            "notes",
        ]

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean()
        lot, day = cleaned.get("lot"), cleaned.get("sold_on")
        if lot and day and day < lot.harvested_on:
            self.add_error("sold_on", BEFORE_HARVEST)
        mass = cleaned.get("mass_kg")
        if mass == 0:
            self.add_error("mass_kg", _("It weighs more than nothing."))
        if lot and mass and mass > self._left_kg(lot) + lot.mass_kg * SLACK:
            self.add_error("mass_kg", _("The lot does not hold this much."))
        return cleaned

    def _left_kg(self, lot: HarvestLot) -> float:
        others = lot.sales.filter(voided_at=None).exclude(pk=self.instance.pk)
        sold: float = others.aggregate(all=Sum("mass_kg"))["all"] or 0.0
        return lot.mass_kg - sold
