"""The rules a farm is held to: its sets, with its certifier's own numbers."""

from __future__ import annotations

from farm.models import Farm
from reports.calc.rules import rules_for
from reports.calc.shapes.rules import Rule, RuleSet

OF_STANDARD = {
    Farm.Standard.US: RuleSet.ORGANIC_US,
    Farm.Standard.EU: RuleSet.ORGANIC_EU,
    Farm.Standard.CA: RuleSet.ORGANIC_CA,
}


def rules_of(farm: Farm) -> tuple[Rule, ...]:
    """The rules of the farm's organic standard and of the books themselves."""
    standard = OF_STANDARD.get(Farm.Standard(farm.standard))
    return rules_for([standard] if standard else [], {})
