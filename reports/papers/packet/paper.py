"""The packet of a season: which parts, and what each prints."""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import replace
from typing import Any

from farm.models import Farm
from farm.units import System
from farm.version import VERSION
from reports.calc.shapes.basics import Span
from reports.collector import at_rest
from reports.labels.packet import SECTIONS
from reports.ledger import season_register
from reports.ledger.attachments import season_attachments
from reports.ledger.dossier import dossier
from reports.ledger.land import plots_of
from reports.ledger.late import late_entries
from reports.ledger.ruling import rules_of
from reports.papers.appendix import assumption_lines, every_source
from reports.papers.changes import changes_part
from reports.papers.findings import findings_part
from reports.papers.land import numbered, plain_map
from reports.papers.packet import goods, ground, laid, sown, work, years
from reports.papers.packet.example import example_part
from reports.papers.packet.tables import Books, Item, Section, weight_of
from reports.papers.ruling import rule_sets
from reports.papers.trace import balance_part

REGISTERS = {
    **ground.REGISTERS,
    **sown.REGISTERS,
    **work.REGISTERS,
    **laid.REGISTERS,
    **goods.REGISTERS,
}
# Rows that a part takes on paper where it is no register.
MAP_WEIGHT = 40
Weigh = Callable[[Mapping[str, Any]], int]
WEIGHTS: Mapping[str, Weigh] = {
    "findings": lambda told: told["count"] * 2 + len(told["counts"]),
    "changes": lambda told: sum(len(one.lines) for one in told["changes"]),
    "balances": lambda told: len(told["balances"]),
    "trace": lambda told: 3 * len(told.get("lines", ())),
    "late": lambda told: len(told["late"].entries),
    "register": lambda told: 2 * len(told["register"].changes),
    "attachments": lambda told: len(told["attachments"]),
    "rules": lambda told: 2 * sum(len(one.lines) for one in told["rule_sets"]),
    "assumptions": lambda told: len(told["assumption_lines"]),
    "sources": lambda told: len(told["sources"]),
    "attestation": lambda told: 20,
}
# Parts with a template of their own that grow long: what they are cut by. A finding
# is three columns of several lines, a balance seven of one.
ITEMS: Mapping[str, Callable[[Mapping[str, Any]], Iterator[Item]]] = {
    "findings": lambda told: (
        Item(line.finding.key, line, cells=15)
        for group in told["groups"]
        for line in group.lines
    ),
    "balances": lambda told: (
        Item(f"{one.noun} {one.id}", one, cells=7) for one in told["balances"]
    ),
}


@at_rest()
def packet_paper(
    farm: Farm,
    year: int,
    *,
    today: dt.date,
    chosen: Iterable[str] = (),
    lot: str = "",
    by: str = "",
) -> dict[str, Any]:
    """Everything the packet prints; all parts where none is chosen."""
    season, last = Span(*farm.season(year)), Span(*farm.season(year - 1))
    books, rules = dossier(farm, season, today=today), rules_of(farm, season)
    plots = plots_of(farm)
    asked = set(chosen) & set(SECTIONS) or set(SECTIONS)
    told = {
        "farm": farm,
        "year": year,
        "printed_on": today,
        "prepared_by": by,
        "version": VERSION,
        "season": season,
        "chosen": asked,
        "choices": SECTIONS,
        "changes": changes_part(farm, books, last, season, year),
        "register": season_register(farm, season),
        "late": late_entries(farm, season),
        "attachments": season_attachments(farm, season),
        "oldest": min((one.on for one in books.entries), default=None),
        "map": plain_map(plots, system=System(farm.units)),
        "on_map": numbered(plots),
        "rule_sets": rule_sets(rules),
        "assumption_lines": tuple(assumption_lines(farm)),
        "sources": every_source(),
        **findings_part(farm, books, rules),
        **balance_part(books, season, rules),
        **example_part(books, season, system=System(farm.units), lot=lot),
    }
    start = told["trace"].start.key if "trace" in told else None
    told["example_balance"] = tuple(
        one for one in told["balances"] if (one.noun, one.id) == start
    )
    parts = _sections(Books(books, System(farm.units)), told, asked)
    return told | {"sections": list(parts)}


def _sections(
    books: Books, told: Mapping[str, Any], asked: set[str]
) -> Iterator[Section]:
    for key, title in SECTIONS.items():
        if key not in asked:
            continue
        section = Section(key, str(title))
        if key in REGISTERS:
            register = REGISTERS[key](books)
            weight = len(register.rows) + (MAP_WEIGHT if key == "land" else 0)
            yield replace(section, register=register, weight=weight)
        elif key in years.GROUPS:
            groups = years.GROUPS[key](books)
            yield replace(section, groups=groups, weight=weight_of(groups))
        else:
            items = ITEMS[key](told) if key in ITEMS else ()
            yield replace(section, items=tuple(items), weight=WEIGHTS[key](told))
