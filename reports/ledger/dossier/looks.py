"""Who walked the ground for a look, a sample or the water: told as entries only."""

from __future__ import annotations

from typing import Any

from django.db.models import F

from records.models import BiomassSample, Irrigation, Observation, SoilTest
from reports.ledger.dossier.reading import Reading


def told(reading: Reading) -> dict[str, Any]:
    """Four queries: observations, biomass samples, irrigations, soil tests."""
    where = {"ground": F("planting__field__name"), "on_field": F("planting__field")}
    for row in reading.dated(Observation).annotate(**where):
        reading.note(row, f"{row.ground}, {row.get_seen_display()}", row.on_field)
    for row in reading.dated(BiomassSample).annotate(**where):
        reading.note(row, str(row.ground), row.on_field)
    watered = set()
    for row in reading.dated(Irrigation).annotate(ground=F("field__name")):
        watered.add(row.field_id)
        reading.note(row, str(row.ground), row.field_id)
    for row in reading.dated(SoilTest).annotate(ground=F("field__name")):
        reading.note(row, str(row.ground), row.field_id)
    return {"watered": frozenset(watered)}
