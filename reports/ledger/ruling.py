"""The rules a farm is held to, its certifier's own numbers, and its replies."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass

from django.db.models import Q

from farm.models import Farm
from records.models import CertifierNumber, FindingReply, RulesFollowed
from reports.calc.rules import rules_for
from reports.calc.shapes.basics import Span
from reports.calc.shapes.rules import Rule, RuleId, RuleSet

OF_STANDARD = {
    Farm.Standard.US: RuleSet.ORGANIC_US,
    Farm.Standard.EU: RuleSet.ORGANIC_EU,
    Farm.Standard.CA: RuleSet.ORGANIC_CA,
}


@dataclass(frozen=True)
class Reply:
    """What the farm says to a finding."""

    id: int
    words: str
    on: dt.date
    by: str


def rules_of(farm: Farm, season: Span) -> tuple[Rule, ...]:
    """The rules in force for a farm in a season: two queries."""
    standard = OF_STANDARD.get(Farm.Standard(farm.standard))
    chosen = [standard] if standard else []
    rows = RulesFollowed.objects.on(farm).live().filter(since__lte=season.last)
    rows = rows.filter(Q(until=None) | Q(until__gte=season.first))
    chosen += [RuleSet(which) for which in rows.values_list("which", flat=True)]
    numbers = CertifierNumber.objects.on(farm).live().values_list("key", "value")
    return rules_for(chosen, dict(_keyed(dict(numbers))))


@dataclass(frozen=True)
class Said:
    """A number as the certifier gave it: who said what, and where the paper is."""

    id: int
    value: float
    note: str
    document: str


def numbers_of(farm: Farm) -> Mapping[str, Said]:
    """Every number of the certifier's own that stands, by the number it replaces."""
    rows = CertifierNumber.objects.on(farm).live()
    return {row.key: Said(row.pk, row.value, row.note, row.document) for row in rows}


def sets_left(rules: Iterable[Rule]) -> tuple[RuleSet, ...]:
    """The sets that a farm may switch on and has not."""
    followed = {rule.set for rule in rules}
    told = (RuleSet(which) for which in RulesFollowed.Which.values)
    return tuple(one for one in told if one not in followed)


def replies_of(farm: Farm) -> Mapping[str, Reply]:
    """Every reply that stands, by the finding it answers."""
    rows = FindingReply.objects.on(farm).live()
    return {
        row.key: Reply(row.pk, row.reply, row.replied_on, row.done_by) for row in rows
    }


def _keyed(
    numbers: Mapping[str, float],
) -> Iterator[tuple[tuple[RuleSet, RuleId, str], float]]:
    """Numbers by set, rule and name; what no rule is called is left out."""
    for key, value in numbers.items():
        words = key.split(".")
        if len(words) == 3 and words[0] in set(RuleSet) and words[1] in set(RuleId):
            yield (RuleSet(words[0]), RuleId(words[1]), words[2]), value
