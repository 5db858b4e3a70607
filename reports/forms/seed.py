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
from reports.calc.shapes.order import Rule
from reports.labels.order import RULE

A_YEAR = dt.timedelta(days=364)
LONGEST = dt.timedelta(days=731)


class PeriodForm(forms.Form):
    # How long a period is looked at when none is told.
    DAYS = A_YEAR

    first = forms.DateField(label=_("Sown from"), widget=DateInput())
    last = forms.DateField(label=_("Sown until"), widget=DateInput())
    overage = PercentField(label=_("Seed to spare, %"))
    headlands = PercentField(label=_("Ground left as headlands, %"), max_value=90)

    def __init__(self, data: Any = None, *, today: dt.date, overage: float) -> None:
        first_guess = {
            "first": today.isoformat(),
            "last": (today + self.DAYS).isoformat(),
            "overage": f"{overage * 100:g}",
            "headlands": "0",
        }
        sent = {name: data.get(name) for name in first_guess if name in (data or {})}
        told = QueryDict(mutable=True)
        if data:
            told.update(data)
        for name, value in (first_guess | sent).items():
            told[name] = value
        super().__init__(told)

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean() or self.cleaned_data
        first, last = cleaned.get("first"), cleaned.get("last")
        if first and last and not first <= last <= first + LONGEST:
            self.add_error(
                "last",
                _("It comes before the first day, or more than two years after it."),
            )
        return cleaned


class OrderForm(PeriodForm):
    """The period of an order, the day it is made, and what is overruled."""

    # Half a bag is not for sale, so that rule is not let go here.
    RULES = (Rule.ORGANIC_FIRST, Rule.LEAST_ORDER, Rule.IN_STOCK)

    on = forms.DateField(
        label=_("Ordered on"),
        widget=DateInput(),
        help_text=_("Offers, searches and approvals are looked at as of this day."),
    )
    without = forms.MultipleChoiceField(
        label=_("Suppliers to leave out"),
        required=False,
        widget=forms.CheckboxSelectMultiple,
    )
    let_go = forms.MultipleChoiceField(
        label=_("Rules to let go"),
        required=False,
        widget=forms.CheckboxSelectMultiple,
        choices=[(rule.value, RULE[rule]) for rule in RULES],
    )
    why = forms.CharField(
        label=_("Why you overrule"),
        required=False,
        max_length=300,
        help_text=_("It is kept with the order."),
    )
    in_full = forms.BooleanField(
        label=_("Take the time to prove what each rule costs"),
        required=False,
        help_text=_("Up to half a minute for a long list of kinds."),
    )

    def __init__(
        self,
        data: Any = None,
        *,
        today: dt.date,
        suppliers: Mapping[int, str],
        **options: Any,
    ) -> None:
        super().__init__(data, today=today, **options)
        told: Any = self.data
        if not told.get("on"):
            told["on"] = min(today.isoformat(), told["first"])
        box: Any = self.fields["without"]
        box.choices = [(str(pk), name) for pk, name in suppliers.items()]
        if not suppliers:
            del self.fields["without"]

    @property
    def left_out(self) -> set[int]:
        """Suppliers that are not asked."""
        return {int(one) for one in self.cleaned_data.get("without", ())}

    @property
    def rules_let_go(self) -> set[Rule]:
        """Rules that do not hold."""
        return {Rule(one) for one in self.cleaned_data["let_go"]}


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
