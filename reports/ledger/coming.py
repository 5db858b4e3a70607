"""Seed that is ordered and has not come: two queries."""

from __future__ import annotations

import datetime as dt
from collections import defaultdict
from collections.abc import Iterator
from typing import Any

from farm.models import Farm
from records.models import SeedLot, SeedOrder
from reports.calc.shapes.order import OnHand
from reports.ledger.seed import LotOnHand

# Scales: less than this is as ordered. [kg]
SAME_KG = 0.005


def on_the_way(farm: Farm, *, by: dt.date) -> list[LotOnHand]:
    """What orders drawn up by a day still owe, kind by kind.

    It has no number of its own yet, so it goes by its line's, below nothing. Of a line
    without live seed, as a mix has none of one kind, nothing can be counted on.
    """
    rows = SeedOrder.objects.on(farm).live().filter(drawn_up_on__lte=by)
    rows = rows.select_related("supplier").prefetch_related("lines__kind", "lots")
    return [one for order in rows.order_by("pk") for one in _owed(order)]


def _owed(order: Any) -> Iterator[LotOnHand]:
    came: defaultdict[int, float] = defaultdict(float)
    for lot in order.lots.all():
        if lot.voided_at is None:
            came[lot.kind_id] += lot.received_kg
    for line in sorted(order.lines.all(), key=lambda row: row.pk):
        here = min(line.seed_kg, came[line.kind_id])
        came[line.kind_id] -= here
        left = line.seed_kg - here
        if left > SAME_KG:
            stock = OnHand(
                lot=-line.pk,
                kind=line.kind.slug,
                left_kg=left,
                pls=line.pls_share,
                tested_on=order.drawn_up_on,
                organic=line.status == SeedLot.Status.ORGANIC,
            )
            yield LotOnHand(
                stock,
                label=str(order.supplier),
                kind_name=str(line.kind),
                status=line.get_status_display(),
                order=order.pk,
            )
