"""An order of seed with its bags."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Mapping, Sequence
from typing import Any, ClassVar

from django import forms
from django.db import models
from django.utils.translation import gettext_lazy as _

from farm.forms.measures import MassField, PercentField
from records.forms.money import MoneyField
from records.forms.rows import RowForm, RowsForm
from records.models import (
    InputProduct,
    Kind,
    OrderComponent,
    OrderDressing,
    OrderLine,
    SeedLot,
    SeedOrder,
)
from records.searching import kinds_searched

NO_SEARCH = _(
    "Not organic: write down a complete search for organic seed of this kind before "
    "the order is sent."
)
NO_SEARCHES = _(
    "Not organic: write down a complete search for organic seed of each kind of the "
    "mix before the order is sent. Not yet searched for: %(kinds)s."
)
# A line, and the rows that tell what is in it.
Mix = tuple[RowForm, list[RowForm]]


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


class OrderComponentForm(RowForm):
    line = forms.IntegerField(
        label=_("Line of the mix, above"), required=False, min_value=1, max_value=100
    )
    kind = forms.ModelChoiceField(Kind.objects.all(), label=_("Kind"), required=False)
    pls_share = PercentField(
        label=_("Pure live seed in the whole mix, %"), required=False
    )

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean() or self.cleaned_data
        if not self.is_filled:
            return cleaned
        for name in ("line", "kind"):
            if not cleaned.get(name) and name not in self.errors:
                self.add_error(name, _("Say of which line it is, and which kind."))
        if cleaned.get("pls_share") == 0:
            self.add_error("pls_share", _("No live seed: nothing of it would come up."))
        return cleaned

    def row(self) -> OrderComponent:
        return OrderComponent(**self.cleaned_data)


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
OrderComponents = forms.formset_factory(
    OrderComponentForm, extra=2, max_num=200, absolute_max=240
)
OrderLines = forms.formset_factory(
    OrderLineForm, extra=3, max_num=100, absolute_max=120
)


def check_mixes(lines: Mapping[int, Mix], components: Sequence[RowForm]) -> None:
    """Say beside each box what cannot be in a mix."""
    for row in components:
        if row.cleaned_data["line"] not in lines:
            row.add_error("line", _("Nothing is ordered in that line."))
    for line, inside in lines.values():
        kinds = [row.cleaned_data["kind"] for row in inside]
        if inside and line.cleaned_data["kind"] not in kinds:
            line.add_error("kind", _("This kind is none of the mix’s components."))
        for place, row in enumerate(inside):
            if kinds[place] in kinds[:place]:
                row.add_error("kind", _("A kind stands twice in the mix."))
        alive = sum(row.cleaned_data["pls_share"] or 0.0 for row in inside)
        if alive > 1 + 1e-9:
            inside[-1].add_error(
                "pls_share", _("The live seed would weigh more than the mix.")
            )


class SeedOrderForm(RowsForm[SeedOrder]):
    HAPPENED = ("drawn_up_on", "sent_on")
    ROWS = OrderLines
    RELATED = "lines"
    MORE: ClassVar = {"dressings": OrderDressings, "components": OrderComponents}

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
        if isinstance(row, OrderComponent):
            return {
                "line": row.line,
                "kind": row.kind_id,
                "pls_share": row.pls_share,
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
        check_mixes(self._mixes(), self.filled("components"))
        sent_on = self.cleaned_data.get("sent_on")
        if sent_on:
            self._ask_for_searches(sent_on)
        return not self.errors and self.rows_are_sound

    def parts(self) -> dict[str, list[models.Model]]:
        """The rows to be kept; lines left empty are not counted."""
        told = super().parts()
        places = {at: place for place, at in enumerate(self._mixes(), start=1)}
        components: Any = told["components"]
        for one in components:
            one.line = places[one.line]
        return told

    def _mixes(self) -> dict[int, Mix]:
        """Every filled line by its number on the page, with its components."""
        inside: defaultdict[int, list[RowForm]] = defaultdict(list)
        for row in self.filled("components"):
            inside[row.cleaned_data["line"]].append(row)
        return {
            number: (row, inside[number])
            for number, row in enumerate(self.rows.forms, start=1)
            if row.is_filled
        }

    def _ask_for_searches(self, sent_on: Any) -> None:
        """Seed that is not organic is ordered after a search, not before it."""
        others = [
            (row, inside)
            for row, inside in self._mixes().values()
            if row.cleaned_data["status"] != SeedLot.Status.ORGANIC
        ]
        searched = kinds_searched(self.farm, by=sent_on) if others else set()
        for row, inside in others:
            told = [one.cleaned_data["kind"] for one in (row, *inside)]
            kinds = {kind.pk: str(kind) for kind in told if kind.pk not in searched}
            if kinds and inside:
                row.add_error(
                    "kind", NO_SEARCHES % {"kinds": ", ".join(kinds.values())}
                )
            elif kinds:
                row.add_error("kind", NO_SEARCH)
