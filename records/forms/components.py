"""The components of a mix, as its tag lists them, and the sums of a tag."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from typing import Any

from django import forms
from django.utils.functional import Promise
from django.utils.translation import gettext_lazy as _

from farm.forms.measures import PercentField
from records.forms.rows import RowForm
from records.models import Kind, LotComponent, OfferComponent, SeedLot, SeedOffer

# A tag's percentages are rounded; together they may miss 100 by this much.
TAG_SLACK = 0.001
WHOLE = 1.0
TOO_MUCH_ALIVE = _("Germination and hard seed together pass 100 %.")
NOTHING_ALIVE = _("No live seed: nothing of it would come up.")


class ComponentForm(RowForm):
    kind = forms.ModelChoiceField(Kind.objects.all(), label=_("Kind"), required=False)
    variety = forms.CharField(label=_("Variety"), max_length=80, required=False)
    pure_share = PercentField(label=_("Pure seed, %"), required=False)
    germination_share = PercentField(label=_("Germination, %"), required=False)
    hard_share = PercentField(label=_("Hard or dormant, %"), required=False)
    origin = forms.CharField(label=_("Origin"), max_length=80, required=False)

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean() or self.cleaned_data
        if not self.is_filled:
            return cleaned
        for name in ("kind", "pure_share"):
            if not cleaned.get(name) and name not in self.errors:
                self.add_error(name, _("Each component needs its kind and its share."))
        for name, sentence in live_seed_faults(cleaned):
            self.add_error(name, sentence)
        return cleaned

    def row(self) -> Any:
        told = self.cleaned_data
        return LotComponent(**told | {"hard_share": told["hard_share"] or 0.0})


class OfferComponentForm(ComponentForm):
    def __init__(self, *args: Any, **options: Any) -> None:
        super().__init__(*args, **options)
        del self.fields["origin"]

    def row(self) -> Any:
        told = self.cleaned_data
        return OfferComponent(**told | {"hard_share": told["hard_share"] or 0.0})


Components = forms.formset_factory(ComponentForm, extra=2, max_num=30, absolute_max=40)
OfferComponents = forms.formset_factory(
    OfferComponentForm, extra=2, max_num=30, absolute_max=40
)


def live_seed_faults(told: Mapping[str, Any]) -> Iterable[tuple[str, str]]:
    """What cannot be in germination and hard seed, by box."""
    germination, hard = told.get("germination_share"), told.get("hard_share") or 0.0
    if germination is None:
        return
    if germination + hard > WHOLE + 1e-9:
        yield "germination_share", str(TOO_MUCH_ALIVE)
    if germination + hard <= 0:
        yield "germination_share", str(NOTHING_ALIVE)


def tag_fault(pure: float | None, told: Mapping[str, Any]) -> str | Promise:
    """Whether the parts of a tag add up; empty when they do, or cannot be told."""
    names = ("other_crop_share", "inert_share", "weed_share")
    parts = [pure, *(told.get(name) for name in names)]
    total = sum(part for part in parts if part is not None)
    sentence = _(
        "Pure seed, other crop, inert matter and weed seed add up to %(sum)s %%, "
        "not 100 %%."
    )
    is_whole = None not in parts
    if total > WHOLE + TAG_SLACK or (is_whole and total < WHOLE - TAG_SLACK):
        return sentence % {"sum": f"{total * 100:.4g}"}
    return ""


def as_one(whole: SeedLot | SeedOffer, rows: Sequence[Mapping[str, Any]]) -> float:
    """Tell a mix as a whole by the weights of its components."""
    pure = float(sum(row["pure_share"] for row in rows))
    whole.purity_share = min(1.0, pure)
    whole.germination_share, whole.hard_share = None, 0.0
    if all(row["germination_share"] is not None for row in rows):
        whole.germination_share = _weighed(rows, "germination_share") / pure
        whole.hard_share = _weighed(rows, "hard_share") / pure
    return pure


def _weighed(rows: Sequence[Mapping[str, Any]], name: str) -> float:
    return float(sum(row["pure_share"] * (row[name] or 0.0) for row in rows))
