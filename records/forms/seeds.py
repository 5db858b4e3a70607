"""A seed lot, typed from its tag."""

from __future__ import annotations

from typing import Any, ClassVar

from django.utils.translation import gettext_lazy as _

from farm.forms.measures import MassField, PercentField
from records.forms.components import (
    Components,
    as_one,
    live_seed_faults,
    tag_fault,
)
from records.forms.rows import RowsForm, with_counts
from records.forms.weeds import Weeds
from records.models import NoxiousWeed, SeedLot


class SeedLotForm(RowsForm[SeedLot]):
    HAPPENED = ("received_on", "tested_on", "non_gmo_on")
    ROWS = Components
    RELATED = "components"
    MORE: ClassVar = {"weeds": Weeds}

    received_kg = MassField(label=_("Weight received"))
    purity_share = PercentField(label=_("Purity, %"), required=False)
    germination_share = PercentField(label=_("Germination, %"), required=False)
    hard_share = PercentField(label=_("Hard or dormant seed, %"), required=False)
    other_crop_share = PercentField(label=_("Other crop seed, %"), required=False)
    inert_share = PercentField(label=_("Inert matter, %"), required=False)
    weed_share = PercentField(label=_("Weed seed, %"), required=False)

    class Meta:
        model = SeedLot
        fields = [
            "kind",
            "variety",
            "lot_number",
            "supplier",
            "came",
            "order",
            "received_on",
            "received_kg",
            "purity_share",
            "germination_share",
            "hard_share",
            "other_crop_share",
            "inert_share",
            "weed_share",
            "no_noxious",
            "tested_on",
            "origin",
            "status",
            "treatment",
            "certificate",
            "non_gmo",
            "non_gmo_on",
            "inoculant",
            "inoculant_until",
            "done_by",
            "notes",
        ]
        help_texts = {
            "no_noxious": _("Otherwise name each with its number below."),
            "non_gmo": _(
                "For kinds of which engineered varieties are sold, such as corn: a "
                "statement of the seller, or a test."
            ),
        }

    def __init__(self, data: Any = None, **options: Any) -> None:
        # A lot of one kind need not say that it has no components.
        super().__init__(with_counts(data, "components"), **options)
        # A row can be left out of what was sent, and then nothing of it was changed.
        self.fields["came"].required = False

    def as_initial(self, row: Any) -> dict[str, Any]:
        if isinstance(row, NoxiousWeed):
            return {"name": row.name, "count_per_kg": row.count_per_kg}
        return {
            "kind": row.kind_id,
            "variety": row.variety,
            "pure_share": row.pure_share,
            "germination_share": row.germination_share,
            "hard_share": row.hard_share,
            "origin": row.origin,
        }

    def clean_hard_share(self) -> float:
        return self.cleaned_data["hard_share"] or 0.0

    def clean_came(self) -> str:
        return self.cleaned_data["came"] or SeedLot.Came.RECEIVED.value

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean()
        if cleaned.get("status") == SeedLot.Status.TREATED and not cleaned.get(
            "treatment"
        ):
            self.add_error("treatment", _("Say what the seed was treated with."))
        if cleaned.get("non_gmo") and not cleaned.get("non_gmo_on"):
            self.add_error("non_gmo_on", _("Say of which day that is."))
        if cleaned.get("non_gmo_on") and not cleaned.get("non_gmo"):
            self.add_error("non_gmo", _("Say by what it is shown."))
        if cleaned.get("purity_share") == 0:
            self.add_error("purity_share", _("Nothing in it would be of this kind."))
        for name, sentence in live_seed_faults(cleaned):
            if name not in self.errors:
                self.add_error(name, sentence)
        self._check_weight(cleaned.get("received_kg"))
        return cleaned

    def _check_weight(self, received: float | None) -> None:
        if received is not None and received <= 0:
            self.add_error("received_kg", _("A lot weighs more than nothing."))
        elif received and self.instance.pk:
            kept = SeedLot.objects.filter(pk=self.instance.pk).with_balance().get()
            over = received + kept.moved_kg - kept.sown_kg
            if received < kept.received_kg and over < -1e-9:
                self.add_error(
                    "received_kg", _("More than this is already sown of it.")
                )

    def rows_fit(self) -> bool:
        rows = [row.cleaned_data for row in self.filled()]
        pure = self.cleaned_data.get("purity_share")
        if rows:
            pure = as_one(self.instance, rows)
            if self.cleaned_data["kind"] not in {row["kind"] for row in rows}:
                self.add_error("kind", _("This kind is none of the mix’s components."))
        if fault := tag_fault(pure, self.cleaned_data):
            self.add_error(None if rows else "purity_share", str(fault))
        if self.cleaned_data["no_noxious"] and self.filled("weeds"):
            self.add_error("no_noxious", _("Weeds are named below."))
        return not self.errors and self.rows_are_sound
