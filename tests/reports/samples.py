"""A season of an invented farm, as plain values, to fill every part of a page."""

from __future__ import annotations

import datetime as dt
import math
from dataclasses import replace

from farm.models import Farm
from reports.calc.shapes.basics import Between, How, Span
from reports.calc.shapes.choice import (
    HoldUntil,
    MulchHold,
    PlantBack,
    Reason,
    ResidueChoice,
    ResidueSide,
    Trace,
)
from reports.calc.shapes.ledger import (
    ApplicationFacts,
    Assumption,
    End,
    Ending,
    FieldLedger,
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
)
from reports.calc.shapes.season import (
    CoverDays,
    Doubt,
    FieldSeason,
    FieldSeed,
    FrostLine,
    FrostSummary,
    Ground,
    KindTotal,
    LotUse,
    NoWindow,
    PlantingSeason,
    SeasonPage,
    SeasonTotals,
    SeedUse,
    Segment,
    StageDate,
    StageName,
    Strip,
    Tick,
    TickKind,
    Verdict,
    WeedWindow,
)
from reports.ledger import Register
from reports.ledger.register import ChangeTold

SEASON = Span(dt.date(2026, 1, 1), dt.date(2026, 12, 31))
TODAY = dt.date(2026, 11, 12)
ACRE = 4046.8564224
LB_AC = 0.45359237 / ACRE


def farm() -> Farm:
    return Farm(
        name="Alder Bank Farm",
        slug="alder-bank",
        operator="R. Okafor and L. Brandt",
        address="118 Millrace Road\nAlder Bank, NY 14800",
        country="United States",
        time_zone="America/New_York",
        standard="us",
        certifier="Northern Reaches Organic Certification",
        certificate_number="NR-20417",
    )


def day(month: int, number: int) -> dt.date:
    return dt.date(2026, month, number)


def kind(name: str = "buckwheat", **more) -> KindFacts:
    told = {
        "slug": name,
        "name": name,
        "botanical": "Fagopyrum esculentum",
        "family": "Polygonaceae",
        "group": Group.BROADLEAF,
        "figures": {},
        "cautions": ("fagopyrism", "allergen"),
    }
    return KindFacts(**{**told, **more})


LOT = LotFacts(1, "Lot BW-2231", "buckwheat", "Ridge Seed", 68.0, 0.882, True, False)
OAT_LOT = LotFacts(2, "Lot OT-17", "oat", "Ridge Seed", 45.0, None, False, False)
OAT = kind(
    "oat",
    botanical="Avena sativa",
    family="Poaceae",
    group=Group.GRASS,
    cautions=("nitrate",),
)
LETTUCE = kind("lettuce", botanical="Lactuca sativa", family="Asteraceae", cautions=())


def trace(half_life: float, mass: float, *, covers: bool) -> Trace:
    def left(days: int, pace: float) -> float:
        return math.exp(-0.693 * pace * days / half_life)

    offsets = tuple(range(0, 121, 10))
    rows = tuple(
        (mass * 0.8 * left(n, 1.4), mass * left(n, 1), mass * 1.2 * left(n, 0.7))
        for n in offsets
    )
    layer = tuple(tuple(5.2 * kg if covers else 0.0 for kg in row) for row in rows)
    freed = tuple(1 - left(n, 1) for n in offsets)
    return Trace(day(7, 9), offsets, rows, layer, freed)


def end(**more) -> End:
    told = {
        "id": 1,
        "on": day(7, 9),
        "area_m2": 2.4 * ACRE,
        "ending": Ending.FLAIL_MOWN,
        "residue": Residue.ON_TOP,
        "bloom_share": 0.25,
        "reason": "Weeds first: the broccoli is transplanted through it.",
    }
    return End(**{**told, **more})


def hold(*days: dt.date | None) -> HoldUntil:
    return HoldUntil(*days)


def choice(planting_id: int = 1) -> ResidueChoice:
    on_top = ResidueSide(
        placement=Residue.ON_TOP,
        taken=True,
        trace=trace(42, 0.36, covers=True),
        half_life_days=42,
        half_life_between=(30, 60),
        below_30_cover_on=day(9, 2),
        hold=MulchHold(None, None, hold(day(7, 20), day(7, 14), day(7, 28))),
        weed_hold_until=day(7, 20),
        nitrogen_total_kg_m2=Between(10 * LB_AC, 28 * LB_AC),
        nitrogen_six_weeks_kg_m2=Between(5 * LB_AC, 14 * LB_AC),
        plant_back=PlantBack(None, day(7, 9), day(7, 9), "HT2013", (day(8, 6),)),
        erosion_index_60_days=0.14,
    )
    worked_in = replace(
        on_top,
        placement=Residue.WORKED_IN,
        taken=False,
        trace=trace(22, 0.36, covers=False),
        half_life_days=22,
        half_life_between=(16, None),
        below_30_cover_on=day(7, 9),
        hold=None,
        weed_hold_until=None,
        nitrogen_total_kg_m2=Between(20 * LB_AC, 45 * LB_AC),
        nitrogen_six_weeks_kg_m2=Between(12 * LB_AC, 30 * LB_AC),
        plant_back=PlantBack(day(7, 30), day(7, 16), day(7, 16), "HT2013"),
        erosion_index_60_days=0.81,
    )
    return ResidueChoice(
        planting_id=planting_id,
        ended_on=day(7, 9),
        end=end(),
        mass_kg_m2=Between(0.29, 0.43),
        mass_likely_kg_m2=0.36,
        mass_how=How.SAMPLED,
        mass_source="",
        nitrogen_share=Between(0.015, 0.025),
        nitrogen_how=How.HANDBOOK,
        on_top=on_top,
        worked_in=worked_in,
        reasons=(
            Reason.ON_TOP_HOLDS_WEEDS_LONGER,
            Reason.ON_TOP_COVERS_SOIL,
            Reason.WORKED_IN_PLANTS_SOONER,
            Reason.BUCKWHEAT_MULCH_NEVER_BETTER_THAN_PARTIAL,
            Reason.THIN_EVIDENCE_DECAY,
        ),
    )


def buckwheat(field_id: int = 1) -> PlantingSeason:
    planting = PlantingFacts(
        id=field_id * 10,
        field_id=field_id,
        area_m2=2.4 * ACRE,
        purpose=Purpose.COVER,
        method=Method.BROADCAST,
        sown_on=day(6, 2),
        planned_on=day(6, 1),
        lines=(SeedLine(kind(), LOT, 68.0, 1.0),),
        observations=(
            Observation(day(6, 7), Seen.EMERGED),
            Observation(day(6, 24), Seen.CANOPY, canopy_share=0.85),
            Observation(day(7, 5), Seen.BLOOM, bloom_share=0.25, weeds_0_to_5=1),
        ),
        samples=(Sample(day(7, 8), (0.33, 0.38, 0.37), None),),
        ends=(end(),),
        next_crop="broccoli",
        next_crop_on=day(7, 24),
        next_crop_transplanted=True,
        late_entry=True,
    )
    stages = (
        StageDate(StageName.EMERGED, day(6, 7), How.OBSERVED),
        StageDate(StageName.CLOSED, day(6, 24), How.OBSERVED),
        StageDate(
            StageName.FIRST_FLOWER,
            day(7, 3),
            How.HEAT,
            day(6, 28),
            day(7, 8),
            "HT2013",
        ),
        StageDate(
            StageName.VIABLE_SEED,
            day(7, 24),
            How.DAYS,
            day(7, 18),
            day(8, 2),
            "MEMORY",
            unverified=True,
        ),
    )
    window = WeedWindow(
        living=(Span(day(6, 24), day(7, 8)),),
        start_how=How.OBSERVED,
        start_early=None,
        start_late=None,
        mulch=choice().on_top.hold,
        days=Between(15, 34),
        days_likely=26,
        reduction=0.62,
        still_open=False,
    )
    use = SeedUse(
        planting_id=planting.id,
        field_id=field_id,
        kind_slug="buckwheat",
        kind_name="buckwheat",
        lot=LOT,
        share=1.0,
        area_m2=2.4 * ACRE,
        method=Method.BROADCAST,
        seed_kg=68.0,
        pls=0.882,
        pls_kg=60.0,
        rate_pls_kg_m2=60.0 / (2.4 * ACRE),
        bulk_rate_kg_m2=68.0 / (2.4 * ACRE),
        handbook_kg_m2=Between(50 * LB_AC, 90 * LB_AC),
        common_practice_kg_m2=Between(70 * LB_AC, 70 * LB_AC),
        sources=("HT2013",),
        verdict=Verdict.WITHIN,
    )
    return PlantingSeason(
        planting=planting,
        field_name="North Creek",
        alive=Span(day(6, 7), day(7, 8)),
        stages=stages,
        living_days=32,
        residue_days=55,
        weed_window=window,
        seed=(use,),
        choices=(choice(planting.id),),
        cautions=("fagopyrism", "allergen"),
        doubts=(Doubt.WRITTEN_LATE,),
    )


def oat(field_id: int = 1) -> PlantingSeason:
    base = buckwheat(field_id)
    line = replace(base.seed[0], kind_slug="oat", kind_name="oat", lot=OAT_LOT)
    return replace(
        base,
        planting=replace(
            base.planting,
            id=field_id * 10 + 1,
            area_m2=1.2 * ACRE,
            method=Method.DRILLED,
            sown_on=day(9, 1),
            lines=(SeedLine(OAT, OAT_LOT, 40.0, 1.0),),
            observations=(),
            samples=(),
            ends=(),
            next_crop="",
            next_crop_on=None,
            late_entry=False,
        ),
        alive=Span(day(9, 8), day(11, 12)),
        stages=(
            StageDate(StageName.EMERGED, day(9, 8), How.ASSUMED, day(9, 4), day(9, 22)),
            StageDate(StageName.CLOSED, None, How.UNKNOWN),
        ),
        living_days=66,
        residue_days=0,
        weed_window=replace(
            base.weed_window,
            living=(),
            mulch=None,
            reduction=None,
            days=Between(0, 0),
            days_likely=0,
            why_none=NoWindow.CLOSURE_UNKNOWN,
        ),
        seed=(
            replace(
                line,
                seed_kg=40.0,
                pls=None,
                pls_kg=None,
                rate_pls_kg_m2=None,
                bulk_rate_kg_m2=40 / (1.2 * ACRE),
                area_m2=1.2 * ACRE,
                handbook_kg_m2=Between(60 * LB_AC, 100 * LB_AC),
                common_practice_kg_m2=None,
                verdict=Verdict.NO_WEIGHT,
            ),
        ),
        choices=(),
        cautions=("nitrate",),
        doubts=(Doubt.EMERGENCE_UNKNOWN,),
    )


def lettuce(field_id: int = 1) -> PlantingSeason:
    base = oat(field_id)
    return replace(
        base,
        planting=replace(
            base.planting,
            id=field_id * 10 + 2,
            purpose=Purpose.CASH,
            method=Method.TRANSPLANTED,
            sown_on=day(4, 10),
            lines=(SeedLine(LETTUCE, None, None, 1.0),),
            ends=(
                end(
                    on=day(5, 28),
                    ending=Ending.HARVESTED,
                    residue=Residue.REMOVED,
                    bloom_share=None,
                    reason="",
                ),
            ),
        ),
        alive=Span(day(4, 10), day(5, 27)),
        stages=(),
        weed_window=replace(base.weed_window, why_none=NoWindow.NOT_A_COVER),
        seed=(),
        cautions=(),
        doubts=(),
    )


def strip() -> Strip:
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
            Tick(day(4, 10), TickKind.SOWN, How.OBSERVED, 12),
            Tick(day(5, 28), TickKind.ENDED, How.OBSERVED, 12),
            Tick(day(6, 2), TickKind.SOWN, How.OBSERVED, 10),
            Tick(day(6, 7), TickKind.EMERGED, How.OBSERVED, 10),
            Tick(day(7, 3), TickKind.FIRST_FLOWER, How.HEAT, 10),
            Tick(day(7, 9), TickKind.ENDED, How.OBSERVED, 10),
            Tick(day(9, 1), TickKind.SOWN, How.OBSERVED, 11),
            Tick(day(9, 8), TickKind.EMERGED, How.ASSUMED, 11),
            Tick(day(10, 15), TickKind.CUT, How.OBSERVED, 11),
        ),
    )


def cover() -> CoverDays:
    return CoverDays(65.0, 48.0, 55.0, 148.0, 49.0, 121.4, 150.5)


def field(number: int = 1, name: str = "North Creek") -> FieldSeason:
    compost = ApplicationFacts(
        number,
        number,
        "Barn compost, 2025 windrow",
        "compost",
        day(4, 2),
        2.4 * ACRE,
        9000.0,
        "mass",
        day(4, 3),
        "",
        "NR list, 2026",
    )
    plantings = (lettuce(number), buckwheat(number), oat(number))
    ledger = FieldLedger(
        number,
        name,
        2.4 * ACRE,
        "organic",
        tuple(row.planting for row in plantings),
        (compost,),
    )
    return FieldSeason(
        ledger=ledger,
        cover=cover(),
        weed_days=Between(15, 34),
        weed_days_likely=26,
        plantings=plantings,
        strip=strip(),
        kinds=("buckwheat", "oat"),
        residues=(Residue.ON_TOP,),
        seed_kg=108.0,
    )


def page(*fields: FieldSeason) -> SeasonPage:
    rows = fields or (field(1), field(2, "South Creek, lower bed by the road"))
    total = sum(row.ledger.area_m2 for row in rows)
    kinds = (
        KindTotal("buckwheat", "buckwheat", len(rows), total, 136.0, ()),
        KindTotal("oat", "oat", len(rows), total / 2, 80.0, ()),
    )
    return SeasonPage(
        season=SEASON,
        counted_to=TODAY,
        station="Alder Bank, orchard gate",
        weather_first=dt.date(1996, 1, 1),
        weather_last=day(11, 11),
        missing_days=3,
        days_without_weather=1,
        fields=rows,
        totals=SeasonTotals(
            total,
            len(rows),
            3 * len(rows),
            cover(),
            Between(15, 34),
            26,
            216.0,
            total,
            0,
            kinds,
        ),
        lots=(
            LotUse(
                LOT,
                tuple(FieldSeed(row.ledger.id, row.ledger.name, 68.0) for row in rows),
                68.0 * len(rows),
            ),
        ),
        frost=FrostSummary(
            (FrostLine(0.0, day(5, 9), day(10, 4)), FrostLine(-2.2, day(4, 20), None)),
            -24.4,
            day(1, 22),
        ),
        assumptions=(
            Assumption("emergence_days", 7, "d"),
            Assumption("decay_slow", 0.7, "ratio"),
            Assumption("mulch_partial_cover", 0.75, "share", farm_own=True),
            Assumption("mulch_strong", 0.8, "kg/m²"),
        ),
        sources=("HT2013", "KUMAR08"),
    )


def register() -> Register:
    return Register(
        written=41,
        changes=(
            ChangeTold(
                at=dt.datetime(2026, 7, 11, 18, 4, tzinfo=dt.UTC),
                by="L. Brandt",
                verb="changed",
                noun="planting",
                label="North Creek · 2026-06-02",
                reason="The scale ticket says 150 lb.",
                differs=(("seed kg", "63.5", "68.0"),),
            ),
            ChangeTold(
                at=dt.datetime(2026, 8, 2, 7, 30, tzinfo=dt.UTC),
                by="R. Okafor",
                verb="voided",
                noun="observation",
                label="South Creek · bloom",
                reason="Written down for the wrong field.",
                differs=(),
            ),
        ),
        left_out=0,
    )
