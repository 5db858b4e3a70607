"""An offer of seed with its table of prices."""

from __future__ import annotations

from collections import defaultdict
from itertools import pairwise
from typing import Any, ClassVar

from django import forms
from django.utils.translation import gettext_lazy as _

from farm.forms.measures import MassField, PercentField
from records.forms.components import (
    TAG_SLACK,
    WHOLE,
    OfferComponents,
    as_one,
    live_seed_faults,
)
from records.forms.money import MoneyField
from records.forms.rows import RowForm, RowsForm
from records.models import OfferComponent, OfferPrice, SeedLot, SeedOffer


class PriceForm(RowForm):
    bag_kg = MassField(label=_("Weight of a bag"), required=False)
    from_bags = forms.IntegerField(
        label=_("From so many bags on"), required=False, min_value=1, max_value=100_000
    )
    price = MoneyField(label=_("Price of a bag"), required=False)

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean() or self.cleaned_data
        if not self.is_filled:
            return cleaned
        if not cleaned.get("bag_kg") and "bag_kg" not in self.errors:
            self.add_error("bag_kg", _("Say how much one bag weighs."))
        if cleaned.get("price") is None and "price" not in self.errors:
            self.add_error("price", _("Say what one bag costs."))
        return cleaned

    def row(self) -> OfferPrice:
        told = self.cleaned_data
        return OfferPrice(**told | {"from_bags": told["from_bags"] or 1})


Prices = forms.formset_factory(PriceForm, extra=4, max_num=30, absolute_max=40)


class SeedOfferForm(RowsForm[SeedOffer]):
    HAPPENED = ("offered_on", "tested_on")
    ROWS = Prices
    RELATED = "prices"
    MORE: ClassVar = {"components": OfferComponents}

    purity_share = PercentField(label=_("Purity, %"), required=False)
    germination_share = PercentField(label=_("Germination, %"), required=False)
    hard_share = PercentField(label=_("Hard or dormant seed, %"), required=False)
    stock_kg = MassField(label=_("No more in stock than"), required=False)

    class Meta:
        model = SeedOffer
        fields = [
            "supplier",
            "kind",
            "variety",
            "offered_on",
            "status",
            "treatment",
            "purity_share",
            "germination_share",
            "hard_share",
            "tested_on",
            "in_stock_from",
            "in_stock_until",
            "stock_kg",
            "notes",
        ]

    def as_initial(self, row: Any) -> dict[str, Any]:
        if isinstance(row, OfferComponent):
            return {
                "kind": row.kind_id,
                "variety": row.variety,
                "pure_share": row.pure_share,
                "germination_share": row.germination_share,
                "hard_share": row.hard_share,
            }
        return {"bag_kg": row.bag_kg, "from_bags": row.from_bags, "price": row.price}

    def clean_hard_share(self) -> float:
        return self.cleaned_data["hard_share"] or 0.0

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean()
        is_treated = cleaned.get("status") == SeedLot.Status.TREATED
        if is_treated and not cleaned.get("treatment"):
            self.add_error("treatment", _("Say what the seed was treated with."))
        for name, sentence in live_seed_faults(cleaned):
            self.add_error(name, sentence)
        return cleaned

    def rows_fit(self) -> bool:
        rows = self.filled()
        if not rows:
            self.add_error(None, _("Say what a bag weighs and costs."))
        by_size: defaultdict[float, list[RowForm]] = defaultdict(list)
        for row in rows:
            by_size[row.cleaned_data["bag_kg"]].append(row)
        for size in by_size.values():
            for one, two in pairwise(size):
                _compare(one, two)
        self._check_mix([row.cleaned_data for row in self.filled("components")])
        return not self.errors and self.rows_are_sound

    def _check_mix(self, rows: list[dict[str, Any]]) -> None:
        if not rows:
            return
        if as_one(self.instance, rows) > WHOLE + TAG_SLACK:
            self.add_error(None, _("The components weigh more than the whole."))
        if self.cleaned_data["kind"] not in {row["kind"] for row in rows}:
            self.add_error("kind", _("This kind is none of the mix’s components."))


def _compare(one: RowForm, two: RowForm) -> None:
    """More bags of a size come later in the table, and no dearer."""
    before, after = one.cleaned_data, two.cleaned_data
    if (after["from_bags"] or 1) <= (before["from_bags"] or 1):
        two.add_error("from_bags", _("The breaks of one size go up from row to row."))
    elif after["price"] > before["price"]:
        two.add_error("price", _("More bags cannot cost more each."))
