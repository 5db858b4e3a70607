"""Seed that is ordered and has not come: six queries."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator
from operator import attrgetter

from farm.models import Farm
from records.models import SeedLot, SeedOrder
from reports.calc.season.receipts import owed
from reports.calc.shapes.order import OnHand
from reports.ledger.orders import facts_of, orders_of
from reports.ledger.seed import LotOnHand

# Scales: less than this is as ordered. [kg]
SAME_KG = 0.005


def on_the_way(farm: Farm, *, by: dt.date) -> list[LotOnHand]:
    """What orders drawn up by a day still owe, line by line.

    It has no number of its own yet, so it goes by its line's, below nothing. A mix is
    counted on by the live seed of each kind that was offered; of a line that tells
    none, nothing can be counted on.
    """
    rows = orders_of(farm).filter(drawn_up_on__lte=by)
    return [one for order in rows for one in _owed(order)]


def _owed(order: SeedOrder) -> Iterator[LotOnHand]:
    rows = sorted(order.lines.all(), key=attrgetter("pk"))
    for place, line, left in owed(facts_of(order)):
        if left <= SAME_KG:
            continue
        first, *more = line.held
        is_known = all(one.pls is not None for one in line.held)
        stock = OnHand(
            lot=-rows[place].pk,
            kind=first.kind,
            left_kg=left,
            pls=first.pls if is_known else None,
            tested_on=order.drawn_up_on,
            organic=line.status == SeedLot.Status.ORGANIC,
            also=tuple((one.kind, one.pls) for one in more),
        )
        yield LotOnHand(
            stock,
            label=str(order.supplier),
            kind_name=line.kind_name,
            status=rows[place].get_status_display(),
            order=order.pk,
        )
