"""The farm's season as one: days weighted by area, seed by lot and by kind."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from functools import partial

from reports.calc.season.lots import sown_of
from reports.calc.shapes.basics import Between, Span
from reports.calc.shapes.ledger import Residue
from reports.calc.shapes.season import (
    CoverDays,
    FieldSeason,
    KindTotal,
    SeasonTotals,
    SeedUse,
)

COVERS = tuple(CoverDays.__dataclass_fields__)


def totals_of(fields: Sequence[FieldSeason], season: Span) -> SeasonTotals:
    """Return the farm's totals; an empty farm has its whole season bare."""
    area_m2 = sum(field.ledger.own_ground_m2 for field in fields)

    def mean(value: Callable[[FieldSeason], float]) -> float:
        weighed = sum(field.ledger.own_ground_m2 * value(field) for field in fields)
        return weighed / area_m2 if area_m2 else 0.0

    return SeasonTotals(
        area_m2=area_m2,
        fields=len(fields),
        plantings=sum(len(field.plantings) for field in fields),
        cover=CoverDays(*(mean(partial(_cover, name)) for name in COVERS)),
        weed_days=Between(
            mean(lambda one: one.weed_days.low), mean(lambda one: one.weed_days.high)
        ),
        weed_days_likely=mean(lambda one: one.weed_days_likely),
        seed_kg=sum(field.seed_kg for field in fields),
        left_on_top_m2=_ended_m2(fields, Residue.ON_TOP, season),
        worked_in_m2=_ended_m2(fields, Residue.WORKED_IN, season),
        kinds=_kinds(fields, season),
    )


def _cover(name: str, field: FieldSeason) -> float:
    return float(getattr(field.cover, name))


def _kinds(fields: Sequence[FieldSeason], season: Span) -> tuple[KindTotal, ...]:
    uses: dict[str, list[SeedUse]] = {}
    for field in fields:
        for row in field.plantings:
            for use in row.seed:
                uses.setdefault(use.kind_slug, []).append(use)
    sown = {id(use) for _, use in sown_of(fields, season)}
    return tuple(
        KindTotal(
            slug=slug,
            name=rows[0].kind_name,
            plantings=len({use.planting_id for use in rows}),
            area_m2=sum(use.area_m2 for use in rows),
            seed_kg=sum(use.seed_kg or 0.0 for use in rows if id(use) in sown),
            sources=tuple(dict.fromkeys(key for use in rows for key in use.sources)),
        )
        for slug, rows in sorted(uses.items())
    )


def _ended_m2(fields: Sequence[FieldSeason], residue: Residue, season: Span) -> float:
    return sum(
        end.area_m2
        for field in fields
        for row in field.plantings
        for end in row.planting.ends
        if end.residue is residue and end.on in season and not end.regrows
    )
