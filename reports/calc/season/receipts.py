"""What came of an order, held against it kind by kind, and what is still owed."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Collection, Iterator, Sequence

from reports.calc.shapes.receipt import (
    CameLot,
    Content,
    Difference,
    OrderedLine,
    OrderFacts,
    Receipt,
    TagLine,
)

SCALES = 0.005  # share of the weight that scales and rounding may take, [ASSUMED]
TAG = 0.005  # share of live seed by which a tag may differ unnoticed, [ASSUMED]
Kinds = frozenset[str]


def receipts_of(order: OrderFacts) -> tuple[Receipt, ...]:
    """Return a receipt for each kind or mix ordered, then for each that only came."""
    came = lots_by_line(order)
    ordered = dict.fromkeys(line.kinds for line in order.lines)
    return tuple(
        _receipt([line for line in order.lines if line.kinds == kinds], came[kinds])
        for kinds in dict.fromkeys((*ordered, *came))
    )


def owed(order: OrderFacts) -> Iterator[tuple[int, OrderedLine, float]]:
    """Return the place of each line with what has not come of it. [kg]"""
    came = {
        kinds: sum(lot.received_kg for lot in lots)
        for kinds, lots in lots_by_line(order).items()
    }
    for place, line in enumerate(order.lines):
        here = min(line.seed_kg, came.get(line.kinds, 0.0))
        came[line.kinds] = came.get(line.kinds, 0.0) - here
        yield place, line, line.seed_kg - here


def lots_by_line(order: OrderFacts) -> defaultdict[Kinds, list[CameLot]]:
    """Return the lots by the kinds of the line they are of, or by their own."""
    ordered = dict.fromkeys(line.kinds for line in order.lines)
    found: defaultdict[Kinds, list[CameLot]] = defaultdict(list)
    for lot in order.lots:
        found[_nearest(lot.kinds, ordered)].append(lot)
    return found


def _nearest(kinds: Kinds, ordered: Collection[Kinds]) -> Kinds:
    """Return the kinds ordered that share most with these; these where none do."""
    best = max(
        ordered, key=lambda one: len(one & kinds) / len(one | kinds), default=kinds
    )
    return best if best & kinds else kinds


def _receipt(lines: Sequence[OrderedLine], lots: Sequence[CameLot]) -> Receipt:
    named = lines[0].kind_name if lines else lots[0].kind_name
    tags = tuple(_tags(lines, lots))
    return Receipt(
        kind_name=named,
        ordered_kg=sum(line.seed_kg for line in lines),
        came_kg=sum(lot.received_kg for lot in lots),
        ordered_pls_kg=_alive([(line.seed_kg, line.held) for line in lines]),
        came_pls_kg=_alive([(lot.received_kg, lot.held) for lot in lots]),
        lots=tuple(lots),
        differences=tuple(_differences(lines, lots, tags)),
        tags=tags,
    )


def _alive(rows: Sequence[tuple[float, tuple[Content, ...]]]) -> float | None:
    shares = [(seed_kg, one.pls) for seed_kg, held in rows for one in held]
    if not shares or any(pls is None for _, pls in shares):
        return None
    return sum(seed_kg * (pls or 0.0) for seed_kg, pls in shares)


def _tags(lines: Sequence[OrderedLine], lots: Sequence[CameLot]) -> Iterator[TagLine]:
    """Hold every tag against the offer, one kind after the other."""
    offered: dict[str, float] = {}
    for one in (one for line in lines for one in line.held):
        if one.pls is not None:
            offered[one.kind] = min(one.pls, offered.get(one.kind, 1.0))
    ordered = {kind for line in lines for kind in line.kinds}
    for lot in lots:
        for one in lot.held:
            least = offered.get(one.kind)
            difference = None
            if ordered and one.kind not in ordered:
                difference = Difference.OTHER_KINDS
            elif one.pls is None:
                difference = Difference.NOT_TESTED
            elif least is not None and one.pls < least - TAG:
                difference = Difference.WEAKER
            yield TagLine(lot, one.kind_name, least, one.pls, difference)


def _differences(
    lines: Sequence[OrderedLine], lots: Sequence[CameLot], tags: Sequence[TagLine]
) -> Iterator[Difference]:
    if not lots:
        yield Difference.NOTHING_YET
        return
    if not lines:
        yield Difference.NOT_ORDERED
        return
    ordered = sum(line.seed_kg for line in lines)
    came = sum(lot.received_kg for lot in lots)
    if came < ordered * (1 - SCALES):
        yield Difference.SHORT
    if came > ordered * (1 + SCALES):
        yield Difference.OVER
    by_tag = {one.difference for one in tags}
    for difference in (Difference.NOT_TESTED, Difference.WEAKER):
        if difference in by_tag:
            yield difference
    if any(lot.kinds != lines[0].kinds for lot in lots):
        yield Difference.OTHER_KINDS
    if {lot.status for lot in lots} - {line.status for line in lines}:
        yield Difference.OTHER_STATUS
    if any(lot.unshown for lot in lots):
        yield Difference.UNSHOWN
    if {lot.variety for lot in lots} - {line.variety for line in lines}:
        yield Difference.OTHER_VARIETY
