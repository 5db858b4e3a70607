"""The farm's own values for what the pages would otherwise assume."""

from __future__ import annotations

from farm.models import Farm
from records.models import OwnAssumption
from reports.calc.assumptions import BY_KEY, Assumptions


def own_assumptions(farm: Farm) -> Assumptions:
    """Our choices with the farm's laid over; one that no longer fits is left out."""
    rows = OwnAssumption.objects.on(farm).live().values_list("key", "value")
    return Assumptions({key: value for key, value in rows if _fits(key, value)})


def _fits(key: str, value: float) -> bool:
    choice = BY_KEY.get(key)
    if choice is None or not choice.changeable:
        return False
    return choice.range.low <= value <= choice.range.high
