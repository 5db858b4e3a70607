"""What came to a lot or left it."""

from __future__ import annotations

from typing import Any

from django.utils.translation import gettext_lazy as _

from farm.forms.base import RecordForm
from farm.forms.measures import MassField
from records.models import LotMove, SeedLot
from records.models.balances import ADDING


class LotMoveForm(RecordForm[LotMove]):
    HAPPENED = ("moved_on",)

    mass_kg = MassField(label=_("Weight"))

    class Meta:
        model = LotMove
        fields = ["lot", "what", "moved_on", "mass_kg", "done_by", "notes"]

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean()
        lot, mass, day = (cleaned.get(name) for name in ("lot", "mass_kg", "moved_on"))
        if mass is not None and mass <= 0:
            self.add_error("mass_kg", _("A weight is more than nothing."))
        elif lot and mass and day and cleaned.get("what") not in ADDING:
            kept = SeedLot.objects.filter(pk=lot.pk).with_balance().get()
            is_counted = kept.counted_on is not None and day <= kept.counted_on
            if not is_counted and mass > kept.left_kg + self._own_kg(lot) + 1e-9:
                self.add_error(
                    "mass_kg", _("The lot does not hold this much. Count it first.")
                )
        return cleaned

    def _own_kg(self, lot: SeedLot) -> float:
        """What this move took before it was mended."""
        row = self.instance
        if row.pk is None:
            return 0.0
        kept = LotMove.objects.get(pk=row.pk)
        return -kept.signed_kg if kept.lot_id == lot.pk else 0.0
