"""What bounds the land and keeps it apart from the neighbours."""

from __future__ import annotations

from collections.abc import Iterator

from reports.calc.rules.asked import UNDER_RULES, under_rules
from reports.calc.shapes.books import Ground, Side
from reports.calc.shapes.dossier import Dossier
from reports.calc.shapes.rules import Found, Matter, Rule, Told


def boundary(books: Dossier, rule: Rule) -> Iterator[Found]:
    """Find ground under the rules that no outline bounds, its own or a whole's."""
    for ground in books.fields:
        if ground.status in UNDER_RULES and not _outlined(books, ground):
            told: Told = {"field": ground.name}
            yield Found(
                Matter.NO_OUTLINE, "fields", ground.id, None, ground.id, values=told
            )


def edges(books: Dossier, rule: Rule) -> Iterator[Found]:
    """Find sides with nothing, or little, in between, and land with no side told."""
    yield from _untold(books)
    for side in books.sides:
        ground = books.field.get(side.field_id)
        if ground is None or ground.status not in UNDER_RULES or side.barrier:
            continue
        if not side.buffer_m:
            yield _of_side(Matter.EDGE_OPEN, side, ground)
        elif side.buffer_m < rule["metres"]:
            yield _of_side(Matter.EDGE_NARROW, side, ground, rule["metres"])


def _untold(books: Dossier) -> Iterator[Found]:
    """Ground under the rules of which no neighbour is told; parts go by the whole."""
    told = {side.field_id for side in books.sides}
    for ground in books.fields:
        is_part = under_rules(books, ground.parent_id or 0)
        if ground.status not in UNDER_RULES or is_part:
            continue
        if not told & ({ground.id} | books.overlap.get(ground.id, frozenset())):
            at = (ground.id, None, ground.id)
            values: Told = {"field": ground.name}
            yield Found(Matter.EDGES_UNTOLD, "fields", *at, values=values)


def _of_side(
    matter: Matter, side: Side, ground: Ground, asked_m: float | None = None
) -> Found:
    told: Told = {
        "field": ground.name,
        "side": side.side,
        "neighbour": side.neighbour,
    }
    if asked_m is not None:
        told |= {"buffer_m": side.buffer_m or 0.0, "asked_m": asked_m}
    return Found(matter, "edges", side.id, None, ground.id, values=told)


def _outlined(books: Dossier, ground: Ground) -> bool:
    seen: set[int] = set()
    here: Ground | None = ground
    while here is not None and here.id not in seen:
        if here.has_outline:
            return True
        seen.add(here.id)
        here = books.field.get(here.parent_id or 0)
    return False
