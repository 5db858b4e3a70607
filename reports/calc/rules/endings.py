"""How stands are ended: sprays, fire."""

from __future__ import annotations

from collections.abc import Iterator

from reports.calc.rules.asked import (
    field_name,
    sprayed_without_leave,
    under_rules,
)
from reports.calc.shapes.books import EndOf, Stand
from reports.calc.shapes.dossier import Dossier
from reports.calc.shapes.rules import (
    Found,
    Matter,
    Rule,
    RuleSet,
    Severity,
    Told,
)


def sprayed(books: Dossier, rule: Rule) -> Iterator[Found]:
    """Find stands sprayed out under the rules with nothing approved for it."""
    for end, stand in sprayed_without_leave(books):
        if end.on in books.season and under_rules(books, stand.field_id):
            yield _of_end(Matter.SPRAYED_OUT, books, end, stand)


def burning(books: Dossier, rule: Rule) -> Iterator[Found]:
    """Find burned residue; a reason written down turns it into a question."""
    for end, stand in _ends(books, "burned"):
        organic = rule.set is RuleSet.ORGANIC_US
        if organic and not under_rules(books, stand.field_id):
            continue
        if organic and end.reason:
            one = _of_end(Matter.BURNED_ASK, books, end, stand, Severity.WARN)
        else:
            one = _of_end(Matter.BURNED, books, end, stand)
        yield one


def _ends(books: Dossier, method: str) -> Iterator[tuple[EndOf, Stand]]:
    for end in books.ends:
        stand = books.stand.get(end.stand_id)
        if end.method == method and stand and end.on in books.season:
            yield end, stand


def _of_end(
    matter: Matter,
    books: Dossier,
    end: EndOf,
    stand: Stand,
    severity: Severity | None = None,
) -> Found:
    told: Told = {
        "field": field_name(books, stand.field_id),
        "kind": stand.name,
        "ended": end.on,
        "reason": end.reason,
    }
    at = (end.id, end.on, stand.field_id)
    return Found(matter, "terminations", *at, severity, told)
