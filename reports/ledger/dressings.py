"""Inoculants and treatments for seed, as written down and as ordered."""

from __future__ import annotations

import datetime as dt
from collections import defaultdict
from collections.abc import Mapping

from farm.models import Farm
from records.models import InputProduct, OrderDressing, SeedDressing, Supplier
from reports.calc.shapes.dressing import Dressing


def dressings_of(farm: Farm) -> Mapping[str, tuple[Dressing, ...]]:
    """Every live dressing, by kind."""
    found: defaultdict[str, list[Dressing]] = defaultdict(list)
    rows = SeedDressing.objects.on(farm).live().select_related("kind", "product")
    sources = dict(Supplier.objects.on(farm).live().values_list("name", "pk"))
    for row in rows.order_by("product__name", "pk"):
        # Who makes it sells it, where nobody else is named.
        source = row.supplier_id or sources.get(row.product.maker)
        found[row.kind.slug].append(_dressing(row, source))
    return {slug: tuple(told) for slug, told in found.items()}


def dressings_ordered(farm: Farm, *, by: dt.date) -> Mapping[int, float]:
    """What was ordered in the twelve months up to a day, by product. [kg]"""
    found: defaultdict[int, float] = defaultdict(float)
    year = (by - dt.timedelta(365), by)
    rows = OrderDressing.objects.filter(
        order__farm=farm, order__voided_at=None, order__drawn_up_on__range=year
    )
    for row in rows:
        in_packets = (row.packets or 0) * (row.packet_kg or 0.0)
        found[row.product_id] += in_packets or row.needed_kg
    return found


def _dressing(row: SeedDressing, source: int | None) -> Dressing:
    return Dressing(
        id=row.pk,
        kind=row.kind.slug,
        kind_name=str(row.kind),
        product=row.product.name,
        dose=row.dose_share,
        lot=row.product_lot,
        until=row.good_until,
        is_inoculant=row.product.type == InputProduct.Type.INOCULANT,
        approval=row.product.approval,
        approved_until=row.product.approved_until,
        product_id=row.product_id,
        supplier=source,
        packet_kg=row.packet_kg,
        packet_price=row.packet_price,
    )
