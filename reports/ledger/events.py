"""What was written down about plantings, gathered by planting."""

from __future__ import annotations

import datetime as dt
from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from farm.models import Farm
from farm.models.record import LATE_AFTER_DAYS
from records.models import (
    Observation as ObservationRow,
)
from records.models import SampleFrame, SeedLine, SeedLot, Termination
from reports.calc.shapes.ledger import (
    End,
    Ending,
    KindFacts,
    LotFacts,
    Method,
    Observation,
    PlantingFacts,
    Purpose,
    Residue,
    Sample,
    Seen,
)
from reports.calc.shapes.ledger import SeedLine as Line

Rows = Mapping[int, list[Mapping[str, Any]]]
TRANSPLANTED = "transplants"


@dataclass(frozen=True)
class Events:
    """Rows of every table that leans on plantings, by planting: five queries."""

    lines: Rows
    observations: Rows
    frames: Rows
    ends: Rows
    lots: Mapping[int, LotFacts]

    @classmethod
    def of(cls, farm: Farm, ids: Sequence[int]) -> Events:
        lines = _by_planting(
            SeedLine.objects.filter(planting__in=ids)
            .order_by("pk")
            .values("planting_id", "kind_id", "lot_id", "seed_kg", "share")
        )
        lots = {row["lot_id"] for rows in lines.values() for row in rows}
        return cls(
            lines=lines,
            observations=_observations(farm, ids),
            frames=_frames(ids),
            ends=_ends(farm, ids),
            lots=_lots(farm, lots - {None}),
        )

    def kind_ids(self) -> set[int]:
        return {row["kind_id"] for rows in self.lines.values() for row in rows}


def _by_planting(rows: Iterable[Any], key: str = "planting_id") -> Rows:
    found: defaultdict[int, list[Mapping[str, Any]]] = defaultdict(list)
    for row in rows:
        found[row[key]].append(row)
    return found


def _observations(farm: Farm, ids: Sequence[int]) -> Rows:
    rows = ObservationRow.objects.on(farm).live().filter(planting__in=ids)
    return _by_planting(
        rows.order_by("seen_on", "pk").values(
            "planting_id",
            "seen_on",
            "seen",
            "canopy_share",
            "bloom_share",
            "ground_cover_share",
            "weeds",
        )
    )


def _frames(ids: Sequence[int]) -> Rows:
    rows = SampleFrame.objects.filter(sample__planting__in=ids, sample__voided_at=None)
    return _by_planting(
        rows.order_by("sample__cut_on", "sample_id", "pk").values(
            "sample_id",
            "area_m2",
            "wet_kg",
            "sample__cut_on",
            "sample__dry_share",
            "sample__nitrogen_share",
            "sample__planting_id",
        ),
        key="sample__planting_id",
    )


def _ends(farm: Farm, ids: Sequence[int]) -> Rows:
    rows = Termination.objects.on(farm).live().filter(planting__in=ids)
    return _by_planting(
        rows.order_by("ended_on", "pk").values(
            "pk",
            "planting_id",
            "ended_on",
            "area_m2",
            "method",
            "outcome",
            "bloom_share",
            "residue",
            "reason",
            "worked_in_on",
        )
    )


def _lots(farm: Farm, ids: set[int]) -> dict[int, LotFacts]:
    rows = SeedLot.objects.on(farm).filter(pk__in=ids).select_related("kind")
    return {
        row.pk: LotFacts(
            id=row.pk,
            label=row.lot_number,
            kind_slug=row.kind.slug,
            supplier=row.supplier,
            received_kg=row.received_kg,
            pls=row.pls_share,
            organic=row.status == SeedLot.Status.ORGANIC,
            treated=row.status == SeedLot.Status.TREATED,
        )
        for row in rows
    }


def planting_facts(
    row: Mapping[str, Any],
    events: Events,
    kinds: Mapping[int, KindFacts],
    *,
    written_on: dt.date,
) -> PlantingFacts:
    """One planting with everything written down about it."""
    pk, sown = row["pk"], row["sown_on"]
    late = sown is not None and (written_on - sown).days > LATE_AFTER_DAYS
    return PlantingFacts(
        id=pk,
        field_id=row["field_id"],
        area_m2=row["area_m2"],
        purpose=Purpose(row["purpose"]),
        method=Method(row["method"]),
        sown_on=sown,
        planned_on=row["planned_on"],
        lines=tuple(_line(one, events.lots, kinds) for one in events.lines.get(pk, ())),
        observations=tuple(_seen(one) for one in events.observations.get(pk, ())),
        samples=tuple(_samples(events.frames.get(pk, ()))),
        ends=tuple(_end(one) for one in events.ends.get(pk, ())),
        next_crop=row["next_crop"],
        next_crop_on=row["next_crop_on"],
        next_crop_transplanted=row["next_crop_set"] == TRANSPLANTED
        if row["next_crop_set"]
        else None,
        late_entry=late,
    )


def _line(
    row: Mapping[str, Any],
    lots: Mapping[int, LotFacts],
    kinds: Mapping[int, KindFacts],
) -> Line:
    return Line(
        kind=kinds[row["kind_id"]],
        lot=lots.get(row["lot_id"]),
        seed_kg=row["seed_kg"],
        share=row["share"],
    )


def _seen(row: Mapping[str, Any]) -> Observation:
    return Observation(
        on=row["seen_on"],
        seen=Seen(row["seen"]),
        canopy_share=row["canopy_share"],
        bloom_share=row["bloom_share"],
        ground_cover_share=row["ground_cover_share"],
        weeds_0_to_5=row["weeds"],
    )


def _samples(frames: Sequence[Mapping[str, Any]]) -> list[Sample]:
    by_sample: dict[int, list[Mapping[str, Any]]] = {}
    for frame in frames:
        by_sample.setdefault(frame["sample_id"], []).append(frame)
    return [
        Sample(
            on=rows[0]["sample__cut_on"],
            dry_kg_m2=tuple(
                one["wet_kg"] * one["sample__dry_share"] / one["area_m2"]
                for one in rows
            ),
            nitrogen_share=rows[0]["sample__nitrogen_share"],
        )
        for rows in by_sample.values()
    ]


def _end(row: Mapping[str, Any]) -> End:
    return End(
        id=row["pk"],
        on=row["ended_on"],
        area_m2=row["area_m2"],
        ending=Ending(row["method"]),
        residue=Residue(row["residue"]),
        regrows=row["outcome"] == Termination.Outcome.REGROWS,
        bloom_share=row["bloom_share"],
        worked_in_on=row["worked_in_on"],
        reason=row["reason"],
    )
