"""A season of an invented farm: what was written down, and what it came to."""

from __future__ import annotations

import datetime as dt
from dataclasses import replace

import numpy as np

from farm.models import Farm
from farm.units import KG_M2_PER_LB_AC, M2_PER_ACRE
from reports.calc.assumptions import Assumptions
from reports.calc.nutrients import Climate
from reports.calc.season import summarize
from reports.calc.shapes.basics import How, Span
from reports.calc.shapes.choice import ResidueChoice
from reports.calc.shapes.ledger import (
    ApplicationFacts,
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
    Seen,
    Weather,
)
from reports.calc.shapes.season import (
    Ground,
    SeasonPage,
    Segment,
    Strip,
    Tick,
    TickKind,
)
from reports.ledger import Register
from reports.ledger.register import ChangeTold

SEASON = Span(dt.date(2026, 1, 1), dt.date(2026, 12, 31))
TODAY = dt.date(2026, 11, 12)
LB_AC = KG_M2_PER_LB_AC


def day(month: int, number: int) -> dt.date:
    return dt.date(2026, month, number)


def farm(**more) -> Farm:
    told = {
        "name": "Alder Bank Farm",
        "slug": "alder-bank",
        "operator": "R. Okafor and L. Brandt",
        "address": "118 Millrace Road\nAlder Bank, NY 14800",
        "country": "United States",
        "time_zone": "America/New_York",
        "standard": "us",
        "certifier": "Northern Reaches Organic Certification",
        "certificate_number": "NR-20417",
    }
    return Farm(**told | more)


def figures(*rows) -> dict[str, tuple[Figure, ...]]:
    found: dict[str, tuple[Figure, ...]] = {}
    for name, low, high, source, *more in rows:
        row = Figure(name, low, high, source, **(more[0] if more else {}))
        found[name] = (*found.get(name, ()), row)
    return found


UNSEEN = {"unverified": True}
BUCKWHEAT = KindFacts(
    "buckwheat",
    "Buckwheat",
    "Fagopyrum esculentum",
    "Polygonaceae",
    Group.BROADLEAF,
    figures(
        ("seeding_rate_broadcast", 70 * LB_AC, 70 * LB_AC, "CORN-BW"),
        ("seeding_rate_broadcast", 60 * LB_AC, 80 * LB_AC, "COMMON"),
        ("emergence_days", 3, 5, "OMAFRA-BW"),
        ("first_flower_days", 28, 42, "OMAFRA-BW"),
        ("viable_seed_days", 45, 45, "GENERAL", UNSEEN),
        ("dry_matter", 2000 * LB_AC, 3000 * LB_AC, "HT2013"),
        ("nitrogen_percent", 0.015, 0.025, "MCCP3-N", {"stage": "at_bloom"}),
        ("plant_back_days", 7, 7, "CORN-HB-IDLE"),
        ("decay_k", 0.025, 0.025, "UPGM", {"stage": "at_bloom"}),
        ("cover_area", 5.228, 5.228, "UPGM"),
    ),
    ("fagopyrism", "allergen"),
)
OATS = KindFacts(
    "oats",
    "Oats",
    "Avena sativa",
    "Poaceae",
    Group.GRASS,
    figures(("emergence_days", 6, 10, "GENERAL", UNSEEN)),
    ("nitrate",),
)
LETTUCE = KindFacts(
    "lettuce", "Lettuce", "Lactuca sativa", "Asteraceae", Group.BROADLEAF, {}
)
LOT = LotFacts(1, "BW-2231", "buckwheat", "Ridge Seed", 160.0, 0.882, True, False)
OAT_LOT = LotFacts(2, "OT-17", "oats", "Ridge Seed", 45.0, None, False, False)


def lettuce(field_id: int) -> PlantingFacts:
    return PlantingFacts(
        id=field_id * 10,
        field_id=field_id,
        area_m2=2.4 * M2_PER_ACRE,
        purpose=Purpose.CASH,
        method=Method.TRANSPLANTED,
        sown_on=day(4, 10),
        planned_on=None,
        lines=(SeedLine(LETTUCE, None, None, 1.0),),
        ends=(
            End(
                field_id * 10,
                day(5, 28),
                2.4 * M2_PER_ACRE,
                Ending.HARVESTED,
                Residue.REMOVED,
            ),
        ),
    )


def buckwheat(field_id: int) -> PlantingFacts:
    end = End(
        id=field_id * 10 + 1,
        on=day(7, 9),
        area_m2=2.4 * M2_PER_ACRE,
        ending=Ending.FLAIL_MOWN,
        residue=Residue.ON_TOP,
        bloom_share=0.25,
        reason="Weeds first: the broccoli is transplanted through it.",
    )
    return PlantingFacts(
        id=field_id * 10 + 1,
        field_id=field_id,
        area_m2=2.4 * M2_PER_ACRE,
        purpose=Purpose.COVER,
        method=Method.BROADCAST,
        sown_on=day(6, 2),
        planned_on=day(6, 1),
        lines=(SeedLine(BUCKWHEAT, LOT, 76.0, 1.0),),
        observations=(
            Observation(day(6, 7), Seen.EMERGED),
            Observation(day(6, 24), Seen.CANOPY, canopy_share=0.85),
            Observation(day(7, 5), Seen.BLOOM, bloom_share=0.25, weeds_0_to_5=1),
        ),
        samples=(Sample(day(7, 8), (0.33, 0.38, 0.37)),),
        ends=(end,),
        next_crop="broccoli",
        next_crop_on=day(7, 24),
        next_crop_transplanted=True,
        late_entry=True,
    )


def oats(field_id: int) -> PlantingFacts:
    return PlantingFacts(
        id=field_id * 10 + 2,
        field_id=field_id,
        area_m2=1.2 * M2_PER_ACRE,
        purpose=Purpose.COVER,
        method=Method.DRILLED,
        sown_on=day(9, 1),
        planned_on=None,
        lines=(SeedLine(OATS, OAT_LOT, 40.0, 1.0),),
    )


def field(number: int = 1, name: str = "North Creek") -> FieldLedger:
    compost = ApplicationFacts(
        id=number,
        field_id=number,
        product="Barn compost, 2025 windrow",
        type="compost",
        on=day(4, 2),
        area_m2=2.4 * M2_PER_ACRE,
        amount=9000.0,
        unit="mass",
        worked_in_on=day(4, 3),
        analysis="",
        approval="NR list, 2026",
    )
    plantings = (lettuce(number), buckwheat(number), oats(number))
    return FieldLedger(
        number, name, 2.4 * M2_PER_ACRE, "organic", plantings, (compost,)
    )


def weather() -> Weather:
    """Four smooth years: cold in January, warm in July, rain every fourth day."""
    days = np.arange(4 * 365)
    warmth = 9 - 14 * np.cos(2 * np.pi * (days - 20) / 365.25)
    rain = np.where(days % 4 == 0, 11.0, 0.0)
    first = dt.date(2023, 1, 1)
    return Weather("Alder Bank, orchard gate", first, warmth - 6, warmth + 6, rain)


def page(*fields: FieldLedger, **own: float) -> SeasonPage:
    rows = fields or (field(1), field(2, "South Creek, lower bed by the road"))
    return summarize(
        rows,
        weather=weather(),
        season=SEASON,
        today=TODAY,
        assumptions=Assumptions(own or {"mulch_partial_cover": 0.75}),
        climate=Climate.COOL,
    )


def choice() -> ResidueChoice:
    stands = page(field()).fields[0].plantings
    return next(stand.choices[0] for stand in stands if stand.choices)


def strip() -> Strip:
    """All five grounds, and every mark but one of them written down."""
    return Strip(
        segments=(
            Segment(day(1, 1), day(4, 9), Ground.BARE, 1),
            Segment(day(4, 10), day(5, 27), Ground.CASH, 1),
            Segment(day(5, 28), day(6, 6), Ground.BARE, 1),
            Segment(day(6, 7), day(7, 8), Ground.LIVING, 1),
            Segment(day(7, 9), day(9, 1), Ground.RESIDUE, 1),
            Segment(day(9, 2), day(9, 7), Ground.BARE, 1),
            Segment(day(9, 8), day(11, 12), Ground.LIVING, 0.5),
            Segment(day(9, 8), day(11, 12), Ground.BARE, 0.5),
            Segment(day(11, 13), day(12, 31), Ground.NOT_YET, 1),
        ),
        ticks=(
            Tick(day(4, 10), TickKind.SOWN, How.OBSERVED, 1),
            Tick(day(5, 28), TickKind.ENDED, How.OBSERVED, 1),
            Tick(day(6, 7), TickKind.EMERGED, How.OBSERVED, 2),
            Tick(day(7, 3), TickKind.FIRST_FLOWER, How.HEAT, 2),
            Tick(day(10, 15), TickKind.CUT, How.OBSERVED, 3),
        ),
    )


def register() -> Register:
    told = ChangeTold(
        at=dt.datetime(2026, 7, 11, 18, 4, tzinfo=dt.UTC),
        by="L. Brandt",
        verb="changed",
        noun="planting",
        label="North Creek · 2026-06-02",
        reason="The scale ticket says 168 lb.",
        differs=(("seed kg", "63.5", "76.0"),),
    )
    voided = replace(
        told,
        by="R. Okafor",
        verb="voided",
        label="South Creek · bloom",
        reason="Written down for the wrong field.",
        differs=(),
    )
    return Register(written=41, changes=(told, voided), left_out=0)
