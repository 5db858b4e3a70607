"""Plantings with their seed, how they ended, and animals on them."""

from __future__ import annotations

from typing import Any

from django.db.models import Exists, F, Min, OuterRef, Q

from records.models import Grazing, HarvestLot, Observation, Planting, Termination
from reports.calc.shapes.books import EndOf, Flock, Line, Stand
from reports.ledger.dossier.lines import lines_of
from reports.ledger.dossier.reading import Reading


def told(reading: Reading) -> dict[str, Any]:
    """Four queries: plantings, their lines with kinds, ends, grazings."""
    stands, rows = [], list(_plantings(reading))
    lines = lines_of(reading, rows)
    for row in rows:
        stand = _stand(row, lines[row.pk])
        stands.append(stand)
        reading.note(row, f"{stand.name}, {row.ground}", row.field_id)
    ends, ways = [], {way.value: str(way.label) for way in Termination.Method}
    where = {"ground": F("planting__field__name"), "on_field": F("planting__field")}
    for row in reading.dated(Termination).annotate(**where):
        ends.append(_end(row))
        reading.note(row, f"{row.ground}, {ways[row.method]}", row.on_field)
    flocks = []
    for row in reading.dated(Grazing).select_related("field"):
        flocks.append(_flock(row))
        reading.note(row, f"{row.animals}, {row.field.name}", row.field_id)
    return {"stands": tuple(stands), "ends": tuple(ends), "flocks": tuple(flocks)}


def _plantings(reading: Reading) -> Any:
    """Those of the years read, and older ones that were still harvested."""
    days = (reading.since, reading.until)
    cut = HarvestLot.objects.filter(
        planting=OuterRef("pk"), voided_at=None, harvested_on__range=days
    )
    chosen = (
        Q(sown_on__range=days) | Q(sown_on=None, planned_on__range=days) | Exists(cut)
    )
    rows = reading.live(Planting).filter(chosen).annotate(ground=F("field__name"))
    return rows.annotate(
        up_on=_first_seen(Observation.Seen.EMERGED),
        killed_on=_first_seen(Observation.Seen.FROST_KILLED),
    )


def _first_seen(what: Observation.Seen) -> Min:
    seen = Q(observations__seen=what, observations__voided_at=None)
    return Min("observations__seen_on", filter=seen)


def _stand(row: Any, lines: list[Line]) -> Stand:
    return Stand(
        id=row.pk,
        field_id=row.field_id,
        area_m2=row.area_m2,
        purpose=row.purpose,
        sown_on=row.sown_on,
        planned_on=row.planned_on,
        lines=tuple(lines),
        method=row.method,
        inoculated=row.inoculated,
        next_crop_on=row.next_crop_on,
        up_on=row.up_on,
        killed_on=row.killed_on,
        depth_m=row.depth_m,
        done_by=row.done_by,
    )


def _end(row: Termination) -> EndOf:
    return EndOf(
        id=row.pk,
        stand_id=row.planting_id,
        on=row.ended_on,
        method=row.method,
        residue=row.residue,
        over=row.outcome == Termination.Outcome.ENDED,
        reason=row.reason,
        tool=row.tool,
        tarp_removed_on=row.tarp_removed_on,
        done_by=row.done_by,
        area_m2=row.area_m2,
    )


def _flock(row: Grazing) -> Flock:
    return Flock(
        id=row.pk,
        field_id=row.field_id,
        stand_id=row.planting_id,
        animals=row.animals,
        in_on=row.in_on,
        out_on=row.out_on,
        label_checked=row.label_checked,
    )
