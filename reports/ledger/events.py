"""What was written down about plantings, gathered by planting."""

from __future__ import annotations

import datetime as dt
from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import groupby
from operator import itemgetter
from typing import Any, TypeVar

from farm.models import Farm
from farm.models.record import LATE_AFTER_DAYS
from records.models import (
    Observation as ObservationRow,
)
from records.models import SampleFrame, SeedLine, SeedLot, Termination
from reports.calc.shapes.ledger import (
    End,
    Ending,
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
from reports.ledger.figures import kind_facts
from reports.ledger.mixes import live_shares

V = TypeVar("V")
ByPlanting = Mapping[int, list[V]]
TRANSPLANTED = "transplants"


@dataclass(frozen=True)
class Events:
    """All that leans on plantings, by planting, in a fixed number of queries.

    Rows come as tuples: a large farm has tens of thousands of them, and a dictionary
    for each would cost as much as reading it.
    """

    lines: ByPlanting[Line]
    observations: ByPlanting[Observation]
    samples: ByPlanting[Sample]
    ends: ByPlanting[End]

    @classmethod
    def of(cls, farm: Farm, ids: Sequence[int]) -> Events:
        return cls(
            lines=_lines(farm, ids),
            observations=_observations(farm, ids),
            samples=_samples(ids),
            ends=_ends(farm, ids),
        )


def _lines(farm: Farm, ids: Sequence[int]) -> ByPlanting[Line]:
    rows: Sequence[Any] = list(
        SeedLine.objects.filter(planting__in=ids)
        .order_by("pk")
        .values_list("planting_id", "kind_id", "lot_id", "seed_kg", "share")
    )
    kinds = kind_facts(farm, {kind for _planting, kind, *_ in rows})
    lots = _lots(farm, {lot for _planting, _kind, lot, *_ in rows} - {None})
    shares = live_shares([(one, of, lots.get(lot), kg) for one, of, lot, kg, _ in rows])
    facts = {pk: _lot(lot) for pk, lot in lots.items()}
    found: defaultdict[int, list[Line]] = defaultdict(list)
    for (planting, kind, lot, seed_kg, share), pls in zip(rows, shares, strict=True):
        told = facts.get(lot)
        if told is not None and told.pls != pls:
            told = replace(told, pls=pls)
        found[planting].append(Line(kinds[kind], told, seed_kg, share))
    return found


def _observations(farm: Farm, ids: Sequence[int]) -> ByPlanting[Observation]:
    rows = ObservationRow.objects.on(farm).live().filter(planting__in=ids)
    told: Iterable[Any] = rows.order_by("seen_on", "pk").values_list(
        "planting_id",
        "seen_on",
        "seen",
        "canopy_share",
        "bloom_share",
        "ground_cover_share",
        "weeds",
    )
    found: defaultdict[int, list[Observation]] = defaultdict(list)
    for planting, on, seen, *shares in told:
        found[planting].append(Observation(on, Seen(seen), *shares))
    return found


def _samples(ids: Sequence[int]) -> ByPlanting[Sample]:
    rows = SampleFrame.objects.filter(sample__planting__in=ids, sample__voided_at=None)
    frames: Iterable[Any] = rows.order_by(
        "sample__cut_on", "sample_id", "pk"
    ).values_list(
        "sample__planting_id",
        "sample_id",
        "sample__cut_on",
        "sample__dry_share",
        "sample__nitrogen_share",
        "area_m2",
        "wet_kg",
    )
    found: defaultdict[int, list[Sample]] = defaultdict(list)
    for one, cut in groupby(frames, key=itemgetter(0, 1, 2, 3, 4)):
        planting, _sample, on, dry_share, nitrogen_share = one
        dry = tuple(wet_kg * dry_share / area_m2 for *_, area_m2, wet_kg in cut)
        found[planting].append(Sample(on, dry, nitrogen_share))
    return found


def _ends(farm: Farm, ids: Sequence[int]) -> ByPlanting[End]:
    rows = Termination.objects.on(farm).live().filter(planting__in=ids)
    told: Iterable[Any] = rows.order_by("ended_on", "pk").values_list(
        "planting_id",
        "pk",
        "ended_on",
        "area_m2",
        "method",
        "residue",
        "outcome",
        "bloom_share",
        "worked_in_on",
        "reason",
    )
    found: defaultdict[int, list[End]] = defaultdict(list)
    for planting, pk, on, area_m2, method, residue, outcome, *more in told:
        regrows = outcome == Termination.Outcome.REGROWS
        end = End(pk, on, area_m2, Ending(method), Residue(residue), regrows, *more)
        found[planting].append(end)
    return found


def _lots(farm: Farm, ids: set[int]) -> dict[int, SeedLot]:
    rows = SeedLot.objects.on(farm).filter(pk__in=ids).select_related("kind")
    return {row.pk: row for row in rows.prefetch_related("components")}


def _lot(row: SeedLot) -> LotFacts:
    return LotFacts(
        id=row.pk,
        label=row.lot_number,
        kind_slug=row.kind.slug,
        supplier=row.supplier,
        received_kg=row.received_kg,
        pls=row.pls_share,
        organic=row.status == SeedLot.Status.ORGANIC,
        treated=row.status == SeedLot.Status.TREATED,
    )


def planting_facts(
    row: Mapping[str, Any], events: Events, *, written_on: dt.date
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
        lines=tuple(events.lines.get(pk, ())),
        observations=tuple(events.observations.get(pk, ())),
        samples=tuple(events.samples.get(pk, ())),
        ends=tuple(events.ends.get(pk, ())),
        next_crop=row["next_crop"],
        next_crop_on=row["next_crop_on"],
        next_crop_transplanted=row["next_crop_set"] == TRANSPLANTED
        if row["next_crop_set"]
        else None,
        late_entry=late,
    )
