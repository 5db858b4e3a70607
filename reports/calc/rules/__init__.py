"""What an inspector would ask: rules as data, and the checks put to the books."""

from reports.calc.rules.checking import CHECKS, findings
from reports.calc.rules.tallies import tallies
from reports.calc.rules.texts import CHECKED_ON, LONGEST_MONTHS, RULES, rules_for

__all__ = [
    "CHECKED_ON",
    "CHECKS",
    "LONGEST_MONTHS",
    "RULES",
    "findings",
    "rules_for",
    "tallies",
]
