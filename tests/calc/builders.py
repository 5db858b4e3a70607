"""Plain values for the workshop's tests: kinds, plantings, fields and weather."""

from __future__ import annotations

import datetime as dt
from collections.abc import Sequence
from dataclasses import replace

import numpy as np

from reports.calc.assumptions import Assumptions
from reports.calc.nutrients import Climate
from reports.calc.season import summarize
from reports.calc.shapes.basics import Span
from reports.calc.shapes.ledger import (
    End,
    Ending,
    FieldLedger,
    Figure,
    Group,
    KindFacts,
    LotFacts,
    Method,
    Observation,
    PlantingFacts,
    Purpose,
    Residue,
    Sample,
    SeedLine,
    Weather,
)
from reports.calc.shapes.season import FieldSeason, PlantingSeason, SeasonPage

LB_AC = 0.45359237 / 4046.8564224  # kg/m²
YEAR = Span(dt.date(2025, 1, 1), dt.date(2025, 12, 31))
AFTER = dt.date(2026, 2, 1)
ACRE_M2 = 4046.8564224


def figure(
    attribute: str, low: float, high: float, source: str, stage: str = ""
) -> Figure:
    return Figure(attribute, low, high, source, stage=stage)


def kind(
    slug: str,
    group: Group,
    *figures: Figure,
    cautions: tuple[str, ...] = (),
) -> KindFacts:
    by_attribute: dict[str, list[Figure]] = {}
    for row in figures:
        by_attribute.setdefault(row.attribute, []).append(row)
    return KindFacts(
        slug,
        slug.replace("-", " ").capitalize(),
        "",
        "",
        group,
        {name: tuple(rows) for name, rows in by_attribute.items()},
        cautions,
    )


# Figures with the key of the handbook that prints them; COMMON is common practice.
BUCKWHEAT = kind(
    "buckwheat",
    Group.BROADLEAF,
    figure("seeding_rate_drilled", 50 * LB_AC, 50 * LB_AC, "CORN-BW"),
    figure("seeding_rate_broadcast", 70 * LB_AC, 70 * LB_AC, "CORN-BW"),
    figure("emergence_days", 3, 5, "OMAFRA-BW"),
    figure("emergence_days", 3, 4, "COMMON"),
    figure("canopy_days", 21, 21, "ASSUMED"),
    figure("canopy_days", 14, 14, "MCCP3-ARROW"),
    figure("first_flower_days", 30, 30, "CALC"),
    figure("first_flower_days", 28, 42, "OMAFRA-BW"),
    figure("first_flower_days", 21, 28, "COMMON"),
    figure("full_bloom_days", 35, 35, "CORN-HB-KEY"),
    figure("first_seed_days", 40, 40, "CORN-HB-KEY", "july_sown"),
    figure("first_seed_days", 45, 50, "CORN-HB-KEY", "june_sown"),
    figure("viable_seed_days", 45, 45, "CORN-HB-KEY"),
    figure("seed_mature_days", 70, 84, "OMAFRA-BW"),
    figure("seed_mature_days", 70, 84, "COMMON"),
    figure("regrowth_bloom_limit", 0.25, 0.25, "COMMON"),
    figure("end_after_flower_days", 7, 10, "OMAFRA-BW"),
    figure("dry_matter", 2000 * LB_AC, 3000 * LB_AC, "HT2013"),
    figure("dry_matter", 4000 * LB_AC, 6000 * LB_AC, "MCCP3-ARROW"),
    figure("nitrogen_percent", 0.02, 0.03, "MCCP3-N", "before_bloom"),
    figure("nitrogen_percent", 0.015, 0.025, "MCCP3-N", "at_bloom"),
    figure("plant_back_days", 7, 7, "CORN-HB-IDLE"),
    figure("decay_k", 0.025, 0.025, "UPGM", "at_bloom"),
    figure("decay_k", 0.015, 0.015, "UPGM", "mature"),
    figure("leaf_share", 0.3, 0.3, "ASSUMED", "at_bloom"),
    figure("leaf_share", 0.2, 0.2, "ASSUMED", "mature"),
    figure("cover_area", 5.228, 5.228, "UPGM"),
    cautions=("fagopyrism", "near_wheat"),
)
RYE = kind(
    "cereal-rye",
    Group.GRASS,
    figure("seeding_rate_drilled", 60 * LB_AC, 120 * LB_AC, "MCCP3-GP"),
    figure("nitrogen_percent", 0.015, 0.025, "MCCP3-N", "at_bloom"),
    figure("decay_k", 0.0133, 0.0133, "UPGM"),
    figure("leaf_share", 0.35, 0.35, "ASSUMED", "anthesis"),
    figure("cover_area", 5.228, 5.228, "UPGM"),
    figure("plant_back_days", 14, 21, "CORN-RYE"),
)
LETTUCE = kind("lettuce", Group.BROADLEAF)
CLOVER = kind(
    "red-clover",
    Group.LEGUME,
    figure("seeding_rate_any", 10 * LB_AC, 10 * LB_AC, "CORN-REDCL"),
)


def lot(kind: KindFacts = BUCKWHEAT, pls: float | None = None, id: int = 1) -> LotFacts:
    return LotFacts(id, f"lot {id}", kind.slug, "A seed house", 100.0, pls, True, False)


def day(month: int, day: int, year: int = 2025) -> dt.date:
    return dt.date(year, month, day)


def ended(
    on: dt.date,
    residue: Residue = Residue.ON_TOP,
    *,
    area_m2: float = 100.0,
    ending: Ending = Ending.MOWN,
    regrows: bool = False,
    worked_in_on: dt.date | None = None,
    bloom_share: float | None = None,
) -> End:
    return End(
        1, on, area_m2, ending, residue, regrows, bloom_share, worked_in_on=worked_in_on
    )


def planting(
    sown_on: dt.date | None,
    *ends: End,
    kinds: Sequence[KindFacts] = (BUCKWHEAT,),
    area_m2: float = 100.0,
    purpose: Purpose = Purpose.COVER,
    method: Method = Method.BROADCAST,
    observations: tuple[Observation, ...] = (),
    samples: tuple[Sample, ...] = (),
    planned_on: dt.date | None = None,
    seed_kg: float | None = None,
    seed_lot: LotFacts | None = None,
    id: int = 1,
) -> PlantingFacts:
    share = 1 / len(kinds)
    return PlantingFacts(
        id,
        1,
        area_m2,
        purpose,
        method,
        sown_on,
        planned_on,
        tuple(SeedLine(one, seed_lot, seed_kg, share) for one in kinds),
        observations,
        samples,
        ends,
    )


def field(
    *plantings: PlantingFacts, area_m2: float = 100.0, id: int = 1
) -> FieldLedger:
    own = tuple(
        replace(row, field_id=id, id=100 * id + place)
        for place, row in enumerate(plantings)
    )
    return FieldLedger(id, f"Bed {id}", area_m2, "organic", own)


def summer(first: dt.date = dt.date(2024, 1, 1), days: int = 1100) -> Weather:
    """Return a warm, humid spell: 18 to 30 °C, 12 mm of rain every third day."""
    rain = np.where(np.arange(days) % 3 == 0, 12.0, 0.0)
    return Weather("Made up", first, np.full(days, 18.0), np.full(days, 30.0), rain)


def season_of(
    *fields: FieldLedger,
    weather: Weather | None = None,
    season: Span = YEAR,
    today: dt.date = AFTER,
    assumptions: Assumptions | None = None,
    climate: Climate = Climate.WARM,
) -> SeasonPage:
    return summarize(
        fields,
        weather=weather,
        season=season,
        today=today,
        assumptions=assumptions or Assumptions(),
        climate=climate,
    )


def one_field(*plantings: PlantingFacts, **wanted: object) -> FieldSeason:
    return season_of(field(*plantings), **wanted).fields[0]  # type: ignore[arg-type]


def one_planting(row: PlantingFacts, **wanted: object) -> PlantingSeason:
    return one_field(row, **wanted).plantings[0]
