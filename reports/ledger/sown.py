"""Seed weighed and ground sown in a period, line by line: five queries."""

from __future__ import annotations

import datetime as dt
from typing import Any

from farm.models import Farm
from records.models import SeedLine
from reports.calc.shapes.ledger import Method
from reports.calc.shapes.sown import Sown
from reports.ledger.figures import kind_facts
from reports.ledger.mixes import live_shares


def sown_lines(farm: Farm, first: dt.date, last: dt.date) -> tuple[Sown, ...]:
    """Every line of seed with a weight, the first sown first."""
    told: Any = SeedLine.objects.filter(
        planting__farm=farm,
        planting__voided_at=None,
        planting__sown_on__range=(first, last),
        seed_kg__gt=0,
    ).select_related("planting__field", "lot__kind")
    told = told.prefetch_related("lot__components")
    rows = list(told.order_by("planting__sown_on", "planting__field__name", "pk"))
    kinds = kind_facts(farm, {row.kind_id for row in rows})
    shares = live_shares(
        [(row.planting_id, row.kind_id, row.lot, row.seed_kg) for row in rows]
    )
    return tuple(
        Sown(
            planting=row.planting_id,
            field_name=row.planting.field.name,
            on=row.planting.sown_on,
            method=Method(row.planting.method),
            area_m2=row.planting.area_m2,
            kind=kinds[row.kind_id],
            share=row.share,
            lot=row.lot.lot_number if row.lot else "",
            seed_kg=row.seed_kg,
            pls=pls,
        )
        for row, pls in zip(rows, shares, strict=True)
    )
