"""A seed lot as the order it came of promised it."""

from __future__ import annotations

from typing import Any

from farm.models import Farm
from records.models import SeedOrder


def lot_guess(farm: Farm, order: str, line: str) -> dict[str, Any]:
    """First guesses of a lot: what one line of an order says of it."""
    if not (order.isdigit() and line.isdigit()):
        return {}
    found = SeedOrder.objects.on(farm).live().filter(pk=int(order)).first()
    lines = list(found.lines.order_by("pk")) if found else []
    if found is None or int(line) >= len(lines):
        return {}
    told = lines[int(line)]
    return {
        "order": found.pk,
        "kind": told.kind_id,
        "variety": told.variety,
        "supplier": found.supplier.name,
        "status": told.status,
        "received_kg": told.seed_kg,
        # What is in a mix; how much and how alive is for the tag to say.
        "components": [
            {"kind": one.kind_id}
            for one in found.components.filter(line=int(line) + 1).order_by("pk")
        ],
    }
