"""Inoculant and treatment for seed, by the label dose of each."""

from __future__ import annotations

import datetime as dt
import math
from collections.abc import Iterable, Mapping, Sequence

from reports.calc.seed import inoculant_kg
from reports.calc.shapes.dressing import Dressed, Dressing, Packets
from reports.calc.shapes.ledger import Group, KindFacts

Dressings = Mapping[str, tuple[Dressing, ...]]
SPILT_KG = 1e-6  # less is rounding, [ASSUMED]
WHOLE_PACKET = 1e-9  # part of a packet that is rounding, [ASSUMED]


def dressed(
    dressings: Dressings, *, kind: str, seed_kg: float | None, on: dt.date
) -> tuple[Dressed, ...]:
    """Return what goes onto seed of a kind by a day, once it is weighed."""
    if seed_kg is None:
        return ()
    return tuple(
        Dressed(
            one,
            seed_kg,
            inoculant_kg(seed_kg=seed_kg, label_kg_per_kg=one.dose),
            month_is_over(one.until, on),
            bool(one.approval) and not (one.approved_until and one.approved_until < on),
        )
        for one in dressings.get(kind, ())
    )


def together(rows: Iterable[Dressed]) -> tuple[Dressed, ...]:
    """Return one row a dressing, with all of the seed it goes onto.

    Examples
    --------
    >>> import datetime as dt
    >>> peat = Dressing(1, "pea", "Pea", "Peat", 0.004, "", None, True, "")
    >>> rows = [Dressed(peat, 50.0, 0.2, False), Dressed(peat, 25.0, 0.1, True)]
    >>> [(row.seed_kg, round(row.amount_kg, 3), row.is_past) for row in together(rows)]
    [(75.0, 0.3, True)]
    """
    found: dict[int, Dressed] = {}
    for row in rows:
        before = found.get(row.dressing.id)
        found[row.dressing.id] = (
            row
            if before is None
            else Dressed(
                row.dressing,
                before.seed_kg + row.seed_kg,
                before.amount_kg + row.amount_kg,
                before.is_past or row.is_past,
                before.is_approved and row.is_approved,
            )
        )
    return tuple(found.values())


def in_packets(
    rows: Iterable[Dressed], had_kg: Mapping[int, float]
) -> tuple[Packets, ...]:
    """Return what is to be bought of each product, in whole packets.

    ``had_kg`` is what was ordered already, by product.

    Examples
    --------
    >>> peat = Dressing(1, "pea", "Pea", "Peat", 0.004, "", None, True, "",
    ...                 product_id=7, packet_kg=0.15)
    >>> (row,) = in_packets([Dressed(peat, 100.0, 0.4, False)], {7: 0.05})
    >>> round(row.needed_kg, 2), row.packets
    (0.35, 3)
    """
    found: dict[int, list[Dressed]] = {}
    for row in rows:
        found.setdefault(row.dressing.product_id, []).append(row)
    told = (_packets(rows, had_kg.get(one, 0.0)) for one, rows in found.items())
    return tuple(one for one in told if one.needed_kg > SPILT_KG)


def _packets(rows: Sequence[Dressed], had_kg: float) -> Packets:
    dressings = [row.dressing for row in rows]
    sold = next((one for one in dressings if one.packet_kg), dressings[0])
    needed_kg = sum(row.amount_kg for row in rows) - had_kg
    packets = None
    if sold.packet_kg:
        packets = math.ceil(needed_kg / sold.packet_kg - WHOLE_PACKET)
    return Packets(
        product_id=sold.product_id,
        product=sold.product,
        kind_names=tuple(dict.fromkeys(one.kind_name for one in dressings)),
        supplier=next((one.supplier for one in dressings if one.supplier), None),
        needed_kg=needed_kg,
        had_kg=had_kg,
        packet_kg=sold.packet_kg,
        packets=packets,
        price=sold.packet_price,
    )


def undosed(kinds: Iterable[KindFacts], dressings: Dressings) -> list[str]:
    """Return the legumes, by name, of which no dose of an inoculant is known."""
    names = [
        kind.name
        for kind in kinds
        if kind.group is Group.LEGUME
        and not any(one.is_inoculant for one in dressings.get(kind.slug, ()))
    ]
    return list(dict.fromkeys(names))


def month_is_over(until: dt.date | None, on: dt.date) -> bool:
    """Return whether a day lies after the month that something is good until."""
    return until is not None and (on.year, on.month) > (until.year, until.month)
