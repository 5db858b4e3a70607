"""Films and tarps that lay on a farm's fields in a season."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Mapping

from django.db.models import Q

from farm.models import Farm
from records.models import MulchSheet
from reports.calc.shapes.basics import Span
from reports.calc.shapes.ledger import Material, SheetFacts


def sheets_of(farm: Farm, season: Span) -> Mapping[int, list[SheetFacts]]:
    """Those that lay on any day of the season, by field: one query."""
    lying = Q(taken_off_on=None) | Q(taken_off_on__gte=season.first)
    rows = MulchSheet.objects.on(farm).live().filter(lying, laid_on__lte=season.last)
    by_field: defaultdict[int, list[SheetFacts]] = defaultdict(list)
    for row in rows.order_by("laid_on", "pk"):
        by_field[row.field_id].append(
            SheetFacts(
                id=row.pk,
                material=Material(row.material),
                words=row.material_words,
                area_m2=row.area_m2,
                laid_on=row.laid_on,
                taken_off_on=row.taken_off_on,
                went=row.went,
            )
        )
    return by_field
