"""An order of seed with its bags."""

from __future__ import annotations

from typing import Any, ClassVar

from django import forms
from django.utils.translation import gettext_lazy as _

from farm.forms.measures import MassField, PercentField
from records.forms.money import MoneyField
from records.forms.rows import RowForm, RowsForm
from records.models import (
    InputProduct,
    Kind,
    OrderDressing,
    OrderLine,
    SeedLot,
    SeedOrder,
)
from records.searching import kinds_searched


class OrderLineForm(RowForm):
    kind = forms.ModelChoiceField(Kind.objects.all(), label=_("Kind"), required=False)
    variety = forms.CharField(label=_("Variety"), max_length=80, required=False)
    status = forms.ChoiceField(
        label=_("Status"), choices=[("", "—"), *SeedLot.Status.choices], required=False
    )
    bag_kg = MassField(label=_("Weight of a bag"), required=False)
    bags = forms.IntegerField(
        label=_("Bags"), required=False, min_value=1, max_value=100_000
    )
    price = MoneyField(label=_("Price of a bag"), required=False)
    pls_share = PercentField(label=_("Pure live seed, %"), required=False)

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean() or self.cleaned_data
        if not self.is_filled:
            return cleaned
        for name in ("kind", "status", "bag_kg", "bags"):
            if not cleaned.get(name) and name not in self.errors:
                self.add_error(
                    name, _("Each line needs kind, status, weight of a bag and bags.")
                )
        if cleaned.get("pls_share") == 0:
            self.add_error("pls_share", _("No live seed: nothing of it would come up."))
        return cleaned

    def row(self) -> OrderLine:
        return OrderLine(**self.cleaned_data)


class OrderDressingForm(RowForm):
    product = forms.ModelChoiceField(
        InputProduct.objects.all(), label=_("Inoculant or treatment"), required=False
    )
    for_seed = forms.CharField(label=_("For seed of"), max_length=200, required=False)
    needed_kg = MassField(label=_("Amount needed"), required=False)
    packet_kg = MassField(label=_("Weight of a packet"), required=False)
    packets = forms.IntegerField(
        label=_("Packets"), required=False, min_value=1, max_value=100_000
    )
    price = MoneyField(label=_("Price of a packet"), required=False)

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean() or self.cleaned_data
        if not self.is_filled:
            return cleaned
        if not cleaned.get("product") and "product" not in self.errors:
            self.add_error("product", _("Say which inoculant or treatment."))
        if not cleaned.get("needed_kg") and "needed_kg" not in self.errors:
            self.add_error("needed_kg", _("Say how much is needed."))
        if cleaned.get("packet_kg") == 0:
            self.add_error("packet_kg", _("A packet weighs more than nothing."))
        return cleaned

    def row(self) -> OrderDressing:
        return OrderDressing(**self.cleaned_data)


OrderDressings = forms.formset_factory(
    OrderDressingForm, extra=1, max_num=50, absolute_max=60
)
OrderLines = forms.formset_factory(
    OrderLineForm, extra=3, max_num=100, absolute_max=120
)


class SeedOrderForm(RowsForm[SeedOrder]):
    HAPPENED = ("drawn_up_on", "sent_on")
    ROWS = OrderLines
    RELATED = "lines"
    MORE: ClassVar = {"dressings": OrderDressings}

    freight = MoneyField(label=_("Freight"), required=False)

    class Meta:
        model = SeedOrder
        fields = [
            "supplier",
            "drawn_up_on",
            "wanted_by",
            "sent_on",
            "reference",
            "freight",
            "overruled",
            "done_by",
            "notes",
        ]

    def as_initial(self, row: Any) -> dict[str, Any]:
        if isinstance(row, OrderDressing):
            return {
                "product": row.product_id,
                "for_seed": row.for_seed,
                "needed_kg": row.needed_kg,
                "packet_kg": row.packet_kg,
                "packets": row.packets,
                "price": row.price,
            }
        return {
            "kind": row.kind_id,
            "variety": row.variety,
            "status": row.status,
            "bag_kg": row.bag_kg,
            "bags": row.bags,
            "price": row.price,
            "pls_share": row.pls_share,
        }

    def rows_fit(self) -> bool:
        rows = self.filled()
        if not rows and not self.filled("dressings"):
            self.add_error(None, _("Say what is ordered: a kind and its bags."))
        sent_on = self.cleaned_data.get("sent_on")
        if sent_on:
            self._ask_for_searches(rows, sent_on)
        return not self.errors and self.rows_are_sound

    def _ask_for_searches(self, rows: list[RowForm], sent_on: Any) -> None:
        """Seed that is not organic is ordered after a search, not before it."""
        others = [
            row for row in rows if row.cleaned_data["status"] != SeedLot.Status.ORGANIC
        ]
        if not others:
            return
        searched = kinds_searched(self.farm, by=sent_on)
        for row in others:
            if row.cleaned_data["kind"].pk not in searched:
                row.add_error(
                    "kind",
                    _(
                        "Not organic: write down a complete search for organic seed "
                        "of this kind before the order is sent."
                    ),
                )
