"""Money, and money by weight, as people write them."""

from __future__ import annotations

import re
from typing import Any, ClassVar

from django import forms
from django.core.exceptions import ValidationError
from django.utils.translation import gettext_lazy as _

from farm import units
from farm.forms.measures import MeasureField
from farm.units import System

KG_A_UNIT = {"lb": units.KG_PER_LB, "kg": 1.0}


def _in_own(text: str, currency: str) -> str:
    """The number alone; another money than the farm's is refused, not converted."""
    code = re.sub(r"[^A-Za-z€$£]", "", text).upper()
    if not code or not currency:
        return text
    if code != currency:
        sentence = _("Every price of this farm is in %(own)s; nothing is converted.")
        raise ValidationError(sentence, params={"own": currency})
    return re.sub(r"[A-Za-z]", "", text).strip()


class MoneyField(forms.DecimalField):
    """Money to the cent, as a plain number."""

    currency = ""

    def __init__(self, **options: Any) -> None:
        super().__init__(min_value=0, max_digits=10, decimal_places=2, **options)

    def told_in(self, currency: str) -> None:
        """Say which money it is, and take a number that names it too."""
        self.currency = self.help_text = currency

    def prepare_value(self, value: Any) -> Any:
        return f"{value:.2f}" if isinstance(value, float) else value

    def to_python(self, value: Any) -> Any:
        if isinstance(value, str):
            value = _in_own(value, self.currency)
        return super().to_python(value)

    def clean(self, value: Any) -> Any:
        money = super().clean(value)
        return None if money is None else float(money)


class MoneyByWeightField(MeasureField):
    """Money for a pound or a kilogram, kept for a kilogram."""

    default_units: ClassVar = {System.US: "lb", System.METRIC: "kg"}

    def told_in(self, currency: str) -> None:
        """Say which money it is."""
        self.help_text = currency

    @staticmethod
    def read(text: str, *, default_unit: str) -> float:
        number, _slash, unit = (part.strip() for part in text.partition("/"))
        try:
            money = float(number)
            return money / KG_A_UNIT[unit or default_unit]
        except (ValueError, KeyError):
            message = _("Write money for a weight, such as 0.15/lb or 0.30/kg.")
            raise ValidationError(message) from None

    @staticmethod
    def written(value: float, system: System) -> str:
        unit = MoneyByWeightField.default_units[system]
        return f"{value * KG_A_UNIT[unit]:.4g}/{unit}"

    def validate(self, value: Any) -> None:
        super().validate(value)
        if value is not None and not 0 <= value < units.KG_PER_LB * 1e6:
            raise ValidationError(_("Money is nothing or more."))
