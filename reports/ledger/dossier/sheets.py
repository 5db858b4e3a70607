"""Films and tarps that lay on the ground in the years read."""

from __future__ import annotations

from typing import Any

from django.db.models import Q

from records.models import MulchSheet
from reports.calc.shapes.books import Laid
from reports.ledger.dossier.reading import Reading


def told(reading: Reading) -> dict[str, Any]:
    """One query: those laid in the years read, and older ones that still lie."""
    laid = []
    lying = Q(taken_off_on=None) | Q(taken_off_on__gte=reading.since)
    rows = reading.live(MulchSheet).filter(lying, laid_on__lte=reading.until)
    for row in rows.select_related("field"):
        laid.append(_laid(row))
        if row.laid_on >= reading.since:
            what = row.material_words or row.get_material_display()
            reading.note(row, f"{what}, {row.field.name}", row.field_id)
    return {"laid": tuple(laid)}


def _laid(row: MulchSheet) -> Laid:
    return Laid(
        id=row.pk,
        field_id=row.field_id,
        material=row.material,
        on=row.laid_on,
        area_m2=row.area_m2,
        stand_id=row.planting_id,
        off_on=row.taken_off_on,
        went=row.went,
        words=row.material_words,
        approval=row.approval,
        done_by=row.done_by,
    )
