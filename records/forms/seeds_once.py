"""The seeds of a sowing typed once for several fields: lots or kinds, and rates."""

from __future__ import annotations

from functools import cache, partial
from typing import Any

from django import forms
from django.utils.translation import gettext_lazy as _

from farm.forms.base import offered
from farm.forms.measures import PercentField, RateField
from farm.models import Farm
from farm.units import System
from records.forms.lots import LotChoice
from records.models import Kind

PARTS = ("lot", "kind", "rate", "share")
ITS_SHARE = _("Its share, %")
WORDS = (
    (_("Seed lot"), _("or kind, without a lot"), _("Rate"), _("Share of the first, %")),
    (_("Second lot"), _("or second kind"), _("Its rate"), ITS_SHARE),
    (_("Third lot"), _("or third kind"), _("Its rate"), ITS_SHARE),
    (_("Fourth lot"), _("or fourth kind"), _("Its rate"), ITS_SHARE),
    (_("Fifth lot"), _("or fifth kind"), _("Its rate"), ITS_SHARE),
)
# So many seeds of a mix can be written down the fast way.
SEEDS = len(WORDS)


class SeedsOnceForm(forms.Form):
    def __init__(self, data: Any = None, *, farm: Farm, **options: Any) -> None:
        super().__init__(data, **options)
        offers: dict[str, Any] = {}
        for number, words in enumerate(WORDS):
            lot, kind, rate, share = words
            boxes: tuple[Any, ...] = (
                LotChoice(label=lot),
                forms.ModelChoiceField(offered(Kind.objects.all(), farm), label=kind),
                RateField(label=rate, system=System(farm.units)),
                PercentField(label=share, min_value=0),
            )
            boxes[0].of_farm(farm, None)
            for part, box in zip(PARTS, boxes, strict=True):
                box.required = box.widget.is_required = False
                self.fields[f"{part}{number}"] = box
                if part in {"lot", "kind"}:
                    # Looked up once for all the boxes that offer the same.
                    offer: Any = cache(partial(list, box.choices))
                    box.choices = offers.setdefault(part, offer)

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean() or self.cleaned_data
        if not self.errors and not self._named():
            self.add_error("lot0", _("Pick a lot, or a kind."))
        return cleaned

    def _named(self) -> list[int]:
        """Which of the seeds have a lot or a kind."""
        told = self.cleaned_data
        return [n for n in range(SEEDS) if told.get(f"lot{n}") or told.get(f"kind{n}")]

    def weights(self, area_m2: float, whole_kg: float | None) -> dict[int, float]:
        """What went of each seed onto an area, by the rates: of one weight in all,
        each has as much as its rate is of all rates."""
        told = self.cleaned_data
        rates = {n: told[f"rate{n}"] for n in self._named() if told.get(f"rate{n}")}
        if whole_kg is None:
            return {n: rate * area_m2 for n, rate in rates.items()}
        if len(self._named()) == 1:
            return dict.fromkeys(self._named(), whole_kg)
        if not self.can_divide:
            return {}
        return {n: whole_kg * rate / sum(rates.values()) for n, rate in rates.items()}

    @property
    def can_divide(self) -> bool:
        """Whether one weight for all can be told apart by seed."""
        named = self._named()
        return len(named) == 1 or all(self.cleaned_data.get(f"rate{n}") for n in named)

    def shares(self) -> dict[int, Any]:
        """Shares as typed; without any, all seeds have the same."""
        named = self._named()
        typed = {n: self.cleaned_data.get(f"share{n}") for n in named}
        if len(named) == 1 or not any(typed.values()):
            return dict.fromkeys(named, 1 / max(1, len(named)))
        return typed

    def told(self) -> dict[str, Any]:
        """Rows by number and rates in SI, ready for the sheet."""
        return {
            name: value.pk if hasattr(value, "pk") else value
            for name, value in self.cleaned_data.items()
            if value is not None
        }

    @property
    def first(self) -> list[Any]:
        return [self[name] for name in ("lot0", "kind0", "rate0")]

    @property
    def more(self) -> list[Any]:
        """The boxes of a mix: of its second seed, and of all that stand in it."""
        return [self["share0"], *self._boxes(1, self._shown())]

    @property
    def yet_more(self) -> list[Any]:
        """The boxes that wait until a mix has still more kinds."""
        return self._boxes(self._shown(), SEEDS)

    def _boxes(self, first: int, end: int) -> list[Any]:
        return [self[f"{part}{n}"] for n in range(first, end) for part in PARTS]

    def _shown(self) -> int:
        """How many seeds stand in it, those with a fault too; at least two."""
        used = [
            n
            for n in range(SEEDS)
            if any(self[f"{part}{n}"].value() for part in PARTS)
            or any(f"{part}{n}" in self.errors for part in PARTS)
        ]
        return max([2, *(n + 1 for n in used)])

    @property
    def is_mix(self) -> bool:
        """Whether a further seed stands in it, so that it is not folded away."""
        names = [f"{part}{n}" for n in range(1, SEEDS) for part in ("lot", "kind")]
        return any(self[name].value() for name in names)
