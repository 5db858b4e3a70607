"""The packet of a season: which parts, and what each prints."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterable
from dataclasses import dataclass
from typing import Any

from farm.models import Farm
from farm.units import System
from reports.calc.changes import changes_between
from reports.calc.shapes.basics import Span
from reports.calc.shapes.dossier import Dossier
from reports.calc.trace import trace
from reports.labels.packet import SECTIONS
from reports.ledger import season_register
from reports.ledger.dossier import dossier
from reports.ledger.enclosed import attachments_of
from reports.ledger.ruling import rules_of
from reports.papers.findings import findings_part
from reports.papers.packet import ground, work
from reports.papers.packet.tables import Books, Register
from reports.papers.trace import balance_part, trace_part

REGISTERS = {**ground.REGISTERS, **work.REGISTERS}


@dataclass(frozen=True)
class Section:
    """One part of the packet: its word in addresses, its title, its table if any."""

    key: str
    title: str
    register: Register | None = None


def packet_paper(
    farm: Farm, year: int, *, today: dt.date, chosen: Iterable[str] = ()
) -> dict[str, Any]:
    """Everything the packet prints; all parts where none is chosen."""
    season, last = Span(*farm.season(year)), Span(*farm.season(year - 1))
    books, rules = dossier(farm, season, today=today), rules_of(farm, season)
    asked = set(chosen) & set(SECTIONS) or set(SECTIONS)
    told = Books(books, System(farm.units))
    sections = [
        Section(key, str(title), REGISTERS[key](told) if key in REGISTERS else None)
        for key, title in SECTIONS.items()
        if key in asked
    ]
    return {
        "farm": farm,
        "year": year,
        "printed_on": today,
        "season": season,
        "sections": sections,
        "chosen": asked,
        "choices": SECTIONS,
        "changes": changes_between(books, last, season),
        "register": season_register(farm, season),
        "attachments": attachments_of(farm, season),
        "oldest": min((one.on for one in books.entries), default=None),
        **findings_part(farm, books, rules),
        **balance_part(books, season, rules),
        **_example(books, season),
    }


def _example(books: Dossier, season: Span) -> dict[str, Any]:
    """The heaviest harvest lot of the season, or else its heaviest seed lot, traced."""
    crops = [
        (one.mass_kg, "harvest-lots", one.id) for one in books.crops if one.on in season
    ]
    lots = [
        (one.received_kg, "seed-lots", one.id)
        for one in books.lots
        if one.received_on in season
    ]
    heaviest = max(crops or lots, default=None)
    told = trace(books, heaviest[1], heaviest[2]) if heaviest else None
    return trace_part(told) if told else {}
