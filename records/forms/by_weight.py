"""Amounts told for a weight of seed: weeds by number, inoculant by its label."""

from __future__ import annotations

import math
from typing import ClassVar

from django.core.exceptions import ValidationError
from django.utils.translation import gettext_lazy as _

from farm import units
from farm.forms.measures import MeasureField
from farm.models import Farm
from farm.templatetags.measures import FIXED_SPACE
from farm.units import System, UnitError

DOSE_SEED_LB = 50
OZ_PER_LB = 16
G_PER_KG = 1000
MOST_WEEDS_PER_KG = 1e7


def parted(text: str) -> tuple[str, str]:
    """What stands before and after "/" or "per"."""
    before, slash, after = text.replace(" per ", "/").partition("/")
    return (before.strip(), after.strip()) if slash else (text.strip(), "")


class CountByWeightField(MeasureField):
    """A number in a weight of seed, kept for a kilogram."""

    default_units: ClassVar = {System.US: "lb", System.METRIC: "kg"}

    @staticmethod
    def read(text: str, *, default_unit: str) -> float:
        number, weight = parted(text)
        try:
            count = float(number)
            seed_kg = mass(weight or default_unit)
        except (ValueError, UnitError):
            sentence = _("Write a number for a weight, such as 3/lb or 9 per 500 g.")
            raise ValidationError(sentence) from None
        if not 0 < count / seed_kg <= MOST_WEEDS_PER_KG:
            raise ValidationError(_("A number is more than nothing, and can be."))
        return count / seed_kg

    @staticmethod
    def written(value: float, system: System) -> str:
        if system is System.US:
            return f"{value * units.KG_PER_LB:.6g}/lb"
        return f"{value:.6g}/kg"


class DoseField(MeasureField):
    """A weight of product for a weight of seed, kept as one over the other."""

    default_units: ClassVar = {System.US: "50 lb", System.METRIC: "kg"}

    @staticmethod
    def read(text: str, *, default_unit: str) -> float:
        product, seed = parted(text)
        try:
            dose = units.parse_mass(product) / mass(seed)
        except UnitError:
            sentence = _(
                "Write a weight for a weight of seed, such as 5 oz/50 lb or 4 g/kg."
            )
            raise ValidationError(sentence) from None
        if not math.isfinite(dose) or dose > 1:
            raise ValidationError(_("This is more product than seed."))
        return dose

    @staticmethod
    def written(value: float, system: System) -> str:
        if system is System.US:
            return f"{value * DOSE_SEED_LB * OZ_PER_LB:.6g} oz/{DOSE_SEED_LB} lb"
        return f"{value * G_PER_KG:.6g} g/kg"


def dose(value: float | None, farm: Farm) -> str:
    """Product for a weight of seed, as labels tell it."""
    if value is None:
        return ""
    return DoseField.written(value, System(farm.units)).replace(" ", FIXED_SPACE)


def count_by_weight(value: float | None, farm: Farm) -> str:
    """A number in a weight of seed, as tags tell it."""
    if value is None:
        return ""
    return CountByWeightField.written(value, System(farm.units))


def mass(text: str) -> float:
    """A weight with its number, or one of its unit. [kg]"""
    return units.parse_mass(text if text[:1].isdigit() else f"1 {text}")
