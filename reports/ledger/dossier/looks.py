"""Who walked the ground for a look, a sample or the water: told as entries only."""

from __future__ import annotations

from typing import Any

from django.db.models import F

from farm.models import Record
from records.models import BiomassSample, Irrigation, Observation, SoilTest
from reports.ledger.dossier.reading import Reading

STAND = {"ground": F("planting__field__name"), "on_field": F("planting__field")}
FIELD = {"ground": F("field__name"), "on_field": F("field")}


def told(reading: Reading) -> dict[str, Any]:
    """Four queries: observations, biomass samples, irrigations, soil tests."""
    seen = {value: str(label) for value, label in Observation.Seen.choices}
    for row in _rows(reading, Observation, "seen").annotate(**STAND):
        reading.note(row, f"{row.ground}, {seen[row.seen]}", row.on_field)
    for row in _rows(reading, BiomassSample).annotate(**STAND):
        reading.note(row, row.ground, row.on_field)
    watered = set()
    for row in _rows(reading, Irrigation).annotate(**FIELD):
        watered.add(row.on_field)
        reading.note(row, row.ground, row.on_field)
    for row in _rows(reading, SoilTest).annotate(**FIELD):
        reading.note(row, row.ground, row.on_field)
    return {"watered": frozenset(watered)}


def _rows(reading: Reading, model: type[Record], *more: str) -> Any:
    """No more of each row than an entry tells, for these are the most of all."""
    return reading.dated(model).only(model.DATE_FIELD, "written_at", "done_by", *more)
