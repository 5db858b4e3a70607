"""A seed lot, typed from its tag."""

from __future__ import annotations

from typing import Any

from django.db.models import Sum
from django.utils.translation import gettext_lazy as _

from farm.forms.base import RecordForm
from farm.forms.measures import MassField, PercentField
from records.models import SeedLine, SeedLot


class SeedLotForm(RecordForm[SeedLot]):
    HAPPENED = ("received_on", "tested_on")

    received_kg = MassField(label=_("Weight received"))
    purity_share = PercentField(label=_("Purity, %"), required=False)
    germination_share = PercentField(label=_("Germination, %"), required=False)
    hard_share = PercentField(label=_("Hard or dormant seed, %"), required=False)

    class Meta:
        model = SeedLot
        fields = [
            "kind",
            "variety",
            "lot_number",
            "supplier",
            "received_on",
            "received_kg",
            "purity_share",
            "germination_share",
            "hard_share",
            "tested_on",
            "origin",
            "status",
            "treatment",
            "certificate",
            "done_by",
            "notes",
        ]

    def clean_hard_share(self) -> float:
        return self.cleaned_data["hard_share"] or 0.0

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean()
        if cleaned.get("status") == SeedLot.Status.TREATED and not cleaned.get(
            "treatment"
        ):
            self.add_error("treatment", _("Say what the seed was treated with."))
        received = cleaned.get("received_kg")
        if received is not None and received <= 0:
            self.add_error("received_kg", _("A lot weighs more than nothing."))
        elif received and self.instance.pk and received < self._sown_kg() - 1e-9:
            self.add_error("received_kg", _("More than this is already sown of it."))
        return cleaned

    def _sown_kg(self) -> float:
        lines = SeedLine.objects.filter(lot=self.instance, planting__voided_at=None)
        return lines.aggregate(all=Sum("seed_kg"))["all"] or 0.0
