"""No more goes out than came in."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator

from reports.calc.shapes.dossier import Dossier
from reports.calc.shapes.rules import Found, Matter, Rule, Told


def stock(books: Dossier, rule: Rule) -> Iterator[Found]:
    """Find lots of which more went out than ever came in."""
    sown: defaultdict[int, float] = defaultdict(float)
    for stand in books.stands:
        for line in stand.lines:
            if line.lot_id and stand.sown_on:
                sown[line.lot_id] += line.seed_kg or 0.0
    came = {lot.id: lot.received_kg for lot in books.lots}
    for move in books.moves:
        came[move.lot_id] = came.get(move.lot_id, 0.0) + move.signed_kg
    for lot in books.lots:
        if sown[lot.id] > came[lot.id] * (1 + rule["packed_share"]):
            told: Told = {"seed": lot.name, "in_kg": came[lot.id]}
            told["out_kg"] = sown[lot.id]
            at = (lot.id, lot.received_on)
            yield Found(Matter.MORE_SOWN, "seed-lots", *at, values=told)
    for crop in books.crops:
        gone = sum(row.mass_kg for row in books.by_lot["gone"].get(crop.id, ()))
        if gone > crop.mass_kg * (1 + rule["bulk_share"]):
            told = {"lot": crop.code, "in_kg": crop.mass_kg, "out_kg": gone}
            where = (crop.id, crop.on, crop.field_id)
            yield Found(Matter.MORE_GONE, "harvest-lots", *where, values=told)
