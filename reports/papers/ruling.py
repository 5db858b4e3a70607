"""The rules put to the books, their numbers, and whose they are."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterable
from dataclasses import dataclass
from itertools import groupby
from typing import Any

from farm.models import Farm
from reports.calc.rules import CHECKED_ON
from reports.calc.shapes.basics import Span
from reports.calc.shapes.rules import Param, Rule, RuleSet
from reports.labels.rules import PARAMS
from reports.ledger.ruling import rules_of
from reports.papers.findings import is_doubtful


@dataclass(frozen=True)
class NumberLine:
    """One number of a rule, with its name and the key it is overruled by."""

    param: Param
    words: str
    key: str


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
    sets = rule_sets(rules_of(farm, season))
    return {"farm": farm, "rule_sets": sets, "checked_on": CHECKED_ON}


def rule_sets(rules: Iterable[Rule]) -> list[SetOfRules]:
    """Rules by the text they stand in."""
    told = sorted(rules, key=lambda rule: list(RuleSet).index(rule.set))
    groups = groupby(told, key=lambda rule: rule.set)
    return [SetOfRules(name, tuple(map(_line, rows))) for name, rows in groups]


def _line(rule: Rule) -> RuleLine:
    numbers = tuple(
        NumberLine(one, str(PARAMS[one.key]), f"{rule.set}.{rule.id}.{one.key}")
        for one in rule.params
    )
    return RuleLine(rule, numbers, is_doubtful(rule))
