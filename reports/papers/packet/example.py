"""The examples an audit begins with: one lot's whole way, and how many are whole."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from farm.units import System
from reports.calc.shapes.basics import Span
from reports.calc.shapes.dossier import Dossier
from reports.calc.shapes.trace import Trace
from reports.calc.trace import trace, woven
from reports.calc.trace.path import Web
from reports.papers.trace import trace_part


def example_part(
    books: Dossier, season: Span, *, system: System, lot: str = ""
) -> dict[str, Any]:
    """The way of the lot asked for, or else of the heaviest of the season.

    A lot is asked for by its noun and number, such as ``harvest-lots-12``.
    """
    web = woven(books)
    asked = _asked(books, web, lot)
    told = asked or _heaviest(books, season, web)
    crops = [one for one in books.crops if one.on in season]
    ways = [trace(books, "harvest-lots", one.id, web=web) for one in crops]
    return {
        **(trace_part(told, books, system) if told else {}),
        "lot": lot,
        "lot_found": asked is not None,
        "lots": tuple(_lots(books, season)),
        "lots_told": len(crops),
        "lots_whole": sum(way is not None and not way.gaps for way in ways),
    }


def _asked(books: Dossier, web: Web, lot: str) -> Trace | None:
    noun, _dash, number = lot.rpartition("-")
    if not number.isdecimal():
        return None
    return trace(books, noun, int(number), web=web)


def _heaviest(books: Dossier, season: Span, web: Web) -> Trace | None:
    crops = [
        (one.mass_kg, "harvest-lots", one.id) for one in books.crops if one.on in season
    ]
    lots = [
        (one.received_kg, "seed-lots", one.id)
        for one in books.lots
        if one.received_on in season
    ]
    heaviest = max(crops or lots, default=None)
    return trace(books, heaviest[1], heaviest[2], web=web) if heaviest else None


def _lots(books: Dossier, season: Span) -> Iterator[tuple[str, str]]:
    """Every lot one may choose, by what an address calls it."""
    for crop in books.crops:
        if crop.on in season:
            yield f"harvest-lots-{crop.id}", f"{crop.code} {crop.crop}"
    for lot in books.lots:
        if lot.received_on in season:
            yield f"seed-lots-{lot.id}", lot.name
    for came in books.delivered:
        if came.on in season:
            name = books.product[came.product_id].name
            yield f"input-lots-{came.id}", f"{name} {came.number}"
