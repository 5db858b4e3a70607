"""Input products as they come, lot by lot."""

from __future__ import annotations

from typing import Any

from django.utils.translation import gettext_lazy as _

from farm.forms.base import RecordForm
from farm.units import System
from records.forms.inputs import AmountField, amount_text
from records.models import InputLot


class InputLotForm(RecordForm[InputLot]):
    HAPPENED = ("received_on",)

    amount = AmountField(
        label=_("Amount"), help_text=_("A weight or a volume, such as 400 lb or 3 gal.")
    )

    class Meta:
        model = InputLot
        fields = [
            "product",
            "lot_number",
            "supplier",
            "received_on",
            "amount",
            "invoice",
            "done_by",
            "notes",
        ]

    field_order = Meta.fields

    def __init__(self, data: Any = None, **options: Any) -> None:
        row, farm = options.get("instance"), options["farm"]
        if row is not None and row.pk:
            typed = amount_text(row, System(farm.units))
            options["initial"] = {"amount": typed, **(options.get("initial") or {})}
        super().__init__(data, **options)

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean()
        row = self.instance
        # Untouched text keeps the exact amount that was written down.
        if cleaned.get("amount") and not (row.pk and "amount" not in self.changed_data):
            row.measure, row.amount_si = cleaned["amount"]
        return cleaned
