"""Inoculants and treatments for seed as the farm wrote them down: one query."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Mapping

from farm.models import Farm
from records.models import InputProduct, SeedDressing
from reports.calc.shapes.dressing import Dressing


def dressings_of(farm: Farm) -> Mapping[str, tuple[Dressing, ...]]:
    """Every live dressing, by kind."""
    found: defaultdict[str, list[Dressing]] = defaultdict(list)
    rows = SeedDressing.objects.on(farm).live().select_related("kind", "product")
    for row in rows.order_by("product__name", "pk"):
        found[row.kind.slug].append(_dressing(row))
    return {slug: tuple(told) for slug, told in found.items()}


def _dressing(row: SeedDressing) -> Dressing:
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
    )
