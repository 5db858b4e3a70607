"""What an inspector would ask, line by line, grouped as one likes to read it."""

from __future__ import annotations

import datetime as dt
from collections import Counter
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from itertools import groupby
from typing import Any

from farm.models import Farm
from farm.names import counting
from farm.units import System
from reports.calc.rules import CHECKED_ON, findings, tallies
from reports.calc.shapes.basics import Span
from reports.calc.shapes.dossier import Dossier
from reports.calc.shapes.rules import Finding, Rule, Severity
from reports.calc.sources import SOURCES, Tier
from reports.labels import label
from reports.labels.rules import counted, sentence
from reports.ledger.dossier import dossier
from reports.ledger.ruling import Reply, replies_of, rules_of

# Ways to group, the first where nothing is asked.
WAYS = ("severity", "field", "rule")


@dataclass(frozen=True)
class FindingLine:
    """One finding as a page or paper prints it."""

    finding: Finding
    words: str
    field: str
    doubtful: bool
    reply: Reply | None = None

    @property
    def noun(self) -> str:
        return self.finding.found.noun

    @property
    def record(self) -> int | None:
        return self.finding.found.record


@dataclass(frozen=True)
class Group:
    """Findings under one heading."""

    title: str
    lines: tuple[FindingLine, ...]


def findings_paper(
    farm: Farm, year: int, *, today: dt.date, by: str = ""
) -> dict[str, Any]:
    """Everything the findings page shows of a season."""
    season = Span(*farm.season(year))
    books = dossier(farm, season, today=today)
    return {
        "farm": farm,
        "year": year,
        "printed_on": today,
        "season": season,
        **findings_part(farm, books, rules_of(farm, season), by=by),
    }


def findings_part(
    farm: Farm, books: Dossier, rules: tuple[Rule, ...], *, by: str = ""
) -> dict[str, Any]:
    """Findings, counts in words, and the rules that were put to the books."""
    way = by if by in WAYS else WAYS[0]
    told, replies = findings(books, rules), replies_of(farm)
    lines = [
        _line(one, books, replies.get(one.key), System(farm.units)) for one in told
    ]
    return {
        "way": way,
        "ways": WAYS,
        "count": len(lines),
        "groups": tuple(_groups(lines, way)),
        "weights": tuple(_weights(lines)),
        "counts": tuple(counted(one) for one in tallies(books)),
        "sets": tuple(dict.fromkeys(rule.set for rule in rules)),
        "checked_on": CHECKED_ON,
    }


def is_doubtful(rule: Rule) -> bool:
    """Whether its text was read in an old copy, or is told from memory."""
    return rule.stale or SOURCES[rule.source].tier is Tier.M


def _line(
    finding: Finding, books: Dossier, reply: Reply | None, system: System
) -> FindingLine:
    ground = books.field.get(finding.found.field_id or 0)
    return FindingLine(
        finding=finding,
        words=sentence(finding, system),
        field=ground.name if ground else "",
        doubtful=is_doubtful(finding.rule),
        reply=reply,
    )


def _groups(lines: Iterable[FindingLine], way: str) -> Iterator[Group]:
    """Lines under headings; within a group they stay in the order of their weight."""
    told = list(lines)
    if way != WAYS[0]:
        told.sort(key=lambda line: (counting(_title(line, way)), _title(line, way)))
    for title, rows in groupby(told, key=lambda line: _title(line, way)):
        yield Group(title, tuple(rows))


def _weights(lines: Iterable[FindingLine]) -> Iterator[tuple[Severity, int]]:
    """How many findings there are of each weight, the heaviest first."""
    told = Counter(line.finding.severity for line in lines)
    yield from ((one, told[one]) for one in Severity if told[one])


def _title(line: FindingLine, way: str) -> str:
    if way == "field":
        return line.field
    return label(line.finding.severity if way == WAYS[0] else line.finding.rule.id)
