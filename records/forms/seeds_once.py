"""The seeds of a sowing typed once for several fields: a lot or a kind, and a rate."""

from __future__ import annotations

from typing import Any

from django import forms
from django.utils.translation import gettext_lazy as _

from farm.forms.base import offered
from farm.forms.measures import RateField
from farm.models import Farm
from farm.units import System
from records.forms.lots import LotChoice
from records.models import Kind


class SeedsOnceForm(forms.Form):
    lot0 = LotChoice(label=_("Seed lot"), required=False)
    kind0 = forms.ModelChoiceField(
        Kind.objects.all(), label=_("or kind, without a lot"), required=False
    )
    rate0 = RateField(label=_("Rate"), required=False)
    lot1 = LotChoice(label=_("Second lot"), required=False)
    kind1 = forms.ModelChoiceField(
        Kind.objects.all(), label=_("or second kind"), required=False
    )
    rate1 = RateField(label=_("Its rate"), required=False)
    lot2 = LotChoice(label=_("Third lot"), required=False)
    kind2 = forms.ModelChoiceField(
        Kind.objects.all(), label=_("or third kind"), required=False
    )
    rate2 = RateField(label=_("Its rate"), required=False)

    def __init__(self, data: Any = None, *, farm: Farm, **options: Any) -> None:
        super().__init__(data, **options)
        for field in self.fields.values():
            if isinstance(field, RateField):
                field.system = System(farm.units)
            elif isinstance(field, LotChoice):
                field.of_farm(farm, None)
            else:
                choice: Any = field
                choice.queryset = offered(choice.queryset, farm)

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean() or self.cleaned_data
        if not self.errors and not any(
            cleaned.get(f"{name}{place}") for name in ("lot", "kind") for place in "012"
        ):
            self.add_error("lot0", _("Pick a lot, or a kind."))
        return cleaned

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
        return [self[f"{name}{n}"] for n in "12" for name in ("lot", "kind", "rate")]
