"""The rules as data: what is asked, where it stands, and the numbers it leans on.

Nothing here is the text of a rule, and no rule here decides anything: the texts
named, the label in hand, the certifier and local code do.
"""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterable, Mapping

from reports.calc.rules.organic import ORGANIC
from reports.calc.rules.others import OTHERS
from reports.calc.shapes.rules import Rule, RuleId, RuleSet

RULES: tuple[Rule, ...] = (*ORGANIC, *OTHERS)
# The day of the newest copy of a text that these rules were held against.
CHECKED_ON = dt.date(2026, 6, 20)

# Kept on every farm: the books add up, and labels are read.
ALWAYS = frozenset({RuleSet.BOOKS, RuleSet.LABEL})

# The longest any rule looks back from a day, whatever a certifier makes of it.
LONGEST_MONTHS = round(
    max(one.high for rule in RULES for one in rule.params if one.unit == "months")
)

Overruling = Mapping[tuple[RuleSet, RuleId, str], float]


def rules_for(sets: Iterable[RuleSet], overruled: Overruling) -> tuple[Rule, ...]:
    """Return the rules of these sets, with the certifier's numbers in them.

    A number that names no rule, or lies out of its range, is left out: the page
    that takes it down refuses it.
    """
    chosen = ALWAYS | set(sets)
    told = [rule for rule in RULES if rule.set in chosen]
    return tuple(_with(rule, overruled) for rule in told)


def _with(rule: Rule, overruled: Overruling) -> Rule:
    for param in rule.params:
        value = overruled.get((rule.set, rule.id, param.key))
        if value is not None and param.low <= value <= param.high:
            rule = rule.overruled(param.key, value)
    return rule
