"""What goes onto seed, with the dose on its label."""

from __future__ import annotations

from django.utils.translation import gettext_lazy as _

from farm.forms.base import RecordForm
from farm.forms.measures import MassField
from records.forms.by_weight import DoseField
from records.forms.money import MoneyField
from records.models import SeedDressing


class SeedDressingForm(RecordForm[SeedDressing]):
    dose_share = DoseField(
        label=_("Dose on the label, for a weight of seed"),
        help_text=_("Such as 5 oz/50 lb or 4 g/kg, as the label of this product says."),
    )

    packet_kg = MassField(label=_("Weight of a packet"), required=False)
    packet_price = MoneyField(label=_("Price of a packet"), required=False)

    class Meta:
        model = SeedDressing
        fields = [
            "kind",
            "product",
            "dose_share",
            "product_lot",
            "good_until",
            "supplier",
            "packet_kg",
            "packet_price",
            "notes",
        ]
