"""The rules put to the books, their numbers, and whose they are."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from itertools import groupby
from types import MappingProxyType
from typing import Any

from farm.models import Farm
from reports.calc.rules import CHECKED_ON
from reports.calc.shapes.basics import Span
from reports.calc.shapes.rules import Param, Rule, RuleSet
from reports.ledger.rules_called import NUMBERS
from reports.ledger.ruling import Said, numbers_of, rules_of, sets_left
from reports.papers.findings import is_doubtful

NOTHING_SAID: Mapping[str, Said] = MappingProxyType({})


@dataclass(frozen=True)
class NumberLine:
    """One number of a rule, with its name and the key it is overruled by."""

    param: Param
    words: str
    key: str
    said: Said | None = None


@dataclass(frozen=True)
class RuleLine:
    """One rule as a page prints it."""

    rule: Rule
    numbers: tuple[NumberLine, ...]
    doubtful: bool


@dataclass(frozen=True)
class SetOfRules:
    """The rules of one text."""

    set: RuleSet
    lines: tuple[RuleLine, ...]


def rules_paper(farm: Farm, *, today: dt.date) -> dict[str, Any]:
    """Every rule in force for the farm today, by the text it stands in."""
    season = Span(*farm.season(farm.season_year(today)))
    rules = rules_of(farm, season)
    sets = rule_sets(rules, numbers_of(farm))
    left = sets_left(rules)
    return {
        "farm": farm,
        "rule_sets": sets,
        "sets_left": left,
        "checked_on": CHECKED_ON,
    }


def rule_sets(
    rules: Iterable[Rule], said: Mapping[str, Said] = NOTHING_SAID
) -> list[SetOfRules]:
    """Rules by the text they stand in, with what was said of their numbers."""
    told = sorted(rules, key=lambda rule: list(RuleSet).index(rule.set))
    groups = groupby(told, key=lambda rule: rule.set)
    return [
        SetOfRules(name, tuple(_line(rule, said) for rule in rows))
        for name, rows in groups
    ]


def _line(rule: Rule, said: Mapping[str, Said]) -> RuleLine:
    numbers = []
    for one in rule.params:
        key = f"{rule.set}.{rule.id}.{one.key}"
        words = str(NUMBERS[one.key])
        numbers.append(NumberLine(one, words, key, said.get(key)))
    return RuleLine(rule, tuple(numbers), is_doubtful(rule))
