"""The period an order is for, and what is taken along or left out."""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping
from typing import Any

from django import forms
from django.http import QueryDict
from django.utils.translation import gettext_lazy as _

from farm.forms.base import DateInput
from farm.forms.measures import MassField, PercentField
from farm.units import System

A_YEAR = dt.timedelta(days=364)
LONGEST = dt.timedelta(days=731)


class PeriodForm(forms.Form):
    # How long a period is looked at when none is told.
    DAYS = A_YEAR

    first = forms.DateField(label=_("Sown from"), widget=DateInput())
    last = forms.DateField(label=_("Sown until"), widget=DateInput())
    overage = PercentField(label=_("Seed to spare, %"))
    headlands = PercentField(label=_("Ground left as headlands, %"), max_value=90)
    without = forms.MultipleChoiceField(
        label=_("Suppliers to leave out"),
        required=False,
        widget=forms.CheckboxSelectMultiple,
    )

    def __init__(
        self,
        data: Any = None,
        *,
        today: dt.date,
        overage: float,
        suppliers: Mapping[int, str] | None = None,
    ) -> None:
        first_guess = {
            "first": today.isoformat(),
            "last": (today + self.DAYS).isoformat(),
            "overage": f"{overage * 100:g}",
            "headlands": "0",
        }
        sent = {name: data.get(name) for name in first_guess if name in (data or {})}
        super().__init__(_with_lists(first_guess | sent, data))
        choices = [(str(pk), name) for pk, name in (suppliers or {}).items()]
        box: Any = self.fields["without"]
        box.choices = choices
        if not choices:
            del self.fields["without"]

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean() or self.cleaned_data
        first, last = cleaned.get("first"), cleaned.get("last")
        if first and last and not first <= last <= first + LONGEST:
            self.add_error("last", _("It lies up to two years after the first."))
        return cleaned

    @property
    def left_out(self) -> set[int]:
        """Suppliers that are not asked."""
        return {int(one) for one in self.cleaned_data.get("without", ())}


def _with_lists(told: Mapping[str, Any], data: Any) -> QueryDict:
    found = QueryDict(mutable=True)
    found.update(told)
    found.setlist("without", data.getlist("without") if data else [])
    return found


class SowingForm(PeriodForm):
    """A few days of sowing, and what the hopper holds."""

    hopper_kg = MassField(label=_("The hopper holds"), required=False)

    DAYS = dt.timedelta(days=6)

    def __init__(self, data: Any = None, *, system: System, **options: Any) -> None:
        super().__init__(data, **options)
        hopper: Any = self.fields["hopper_kg"]
        hopper.system = system
        told: Any = self.data
        told["hopper_kg"] = (data or {}).get("hopper_kg", "")
