"""What came of an order, held against it kind by kind."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from reports.calc.shapes.receipt import (
    CameLot,
    Difference,
    OrderedLine,
    OrderFacts,
    Receipt,
)

SCALES = 0.005  # share of the weight that scales and rounding may take, [ASSUMED]
TAG = 0.005  # share of live seed by which a tag may differ unnoticed, [ASSUMED]


def receipts_of(order: OrderFacts) -> tuple[Receipt, ...]:
    """Return a receipt for each kind ordered, then for each that only came."""
    rows: tuple[OrderedLine | CameLot, ...] = (*order.lines, *order.lots)
    kinds = dict.fromkeys(row.kind for row in rows)
    return tuple(
        _receipt(
            [line for line in order.lines if line.kind == kind],
            [lot for lot in order.lots if lot.kind == kind],
        )
        for kind in kinds
    )


def _receipt(lines: Sequence[OrderedLine], lots: Sequence[CameLot]) -> Receipt:
    named = lines[0].kind_name if lines else lots[0].kind_name
    return Receipt(
        kind_name=named,
        ordered_kg=sum(line.seed_kg for line in lines),
        came_kg=sum(lot.received_kg for lot in lots),
        ordered_pls_kg=_alive([(line.seed_kg, line.pls) for line in lines]),
        came_pls_kg=_alive([(lot.received_kg, lot.pls) for lot in lots]),
        lots=tuple(lots),
        differences=tuple(_differences(lines, lots)),
    )


def _alive(rows: Sequence[tuple[float, float | None]]) -> float | None:
    if not rows or any(pls is None for _, pls in rows):
        return None
    return sum(seed_kg * (pls or 0.0) for seed_kg, pls in rows)


def _differences(
    lines: Sequence[OrderedLine], lots: Sequence[CameLot]
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
    if any(lot.pls is None for lot in lots):
        yield Difference.NOT_TESTED
    offered = [line.pls for line in lines if line.pls is not None]
    tagged = [lot.pls for lot in lots if lot.pls is not None]
    if offered and tagged and min(tagged) < min(offered) - TAG:
        yield Difference.WEAKER
    if {lot.status for lot in lots} - {line.status for line in lines}:
        yield Difference.OTHER_STATUS
    if {lot.variety for lot in lots} - {line.variety for line in lines}:
        yield Difference.OTHER_VARIETY
