"""What a season came to: the numbers, dates and ranges that leave the workshop."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass
from enum import StrEnum

from reports.calc.shapes.basics import Between, How, Span
from reports.calc.shapes.choice import MulchHold, ResidueChoice
from reports.calc.shapes.ledger import (
    Assumption,
    FieldLedger,
    LotFacts,
    Method,
    PlantingFacts,
    Residue,
)


class StageName(StrEnum):
    """Stages of growth a person can see, in the order they come."""

    EMERGED = "emerged"
    CLOSED = "closed"
    FIRST_FLOWER = "first_flower"
    FULL_BLOOM = "full_bloom"
    FIRST_SEED = "first_seed"
    VIABLE_SEED = "viable_seed"


class Ground(StrEnum):
    """What a piece of ground carries on a day."""

    LIVING = "living"
    CASH = "cash"
    RESIDUE = "residue"
    BARE = "bare"
    NOT_YET = "not_yet"


class NoWindow(StrEnum):
    """Why no weed-suppression window is counted."""

    NOT_A_COVER = "not_a_cover"
    NOT_SOWN = "not_sown"
    CLOSURE_UNKNOWN = "closure_unknown"
    NOT_YET_CLOSED = "not_yet_closed"
    ENDED_BEFORE_CLOSURE = "ended_before_closure"


class Doubt(StrEnum):
    """What makes a planting's dates doubtful."""

    NO_DATE = "no_date"
    PLANNED_NOT_SOWN = "planned_not_sown"
    WRITTEN_LATE = "written_late"
    SEEN_BEFORE_SOWN = "seen_before_sown"
    ENDED_BEFORE_SOWN = "ended_before_sown"
    SOWN_AFTER_TODAY = "sown_after_today"
    EMERGENCE_UNKNOWN = "emergence_unknown"


class Verdict(StrEnum):
    """How the rate used stands to the rate in print."""

    WITHIN = "within"
    BELOW = "below"
    ABOVE = "above"
    NO_RANGE = "no_range"
    NO_WEIGHT = "no_weight"


class TickKind(StrEnum):
    """Small marks on a season strip."""

    SOWN = "sown"
    EMERGED = "emerged"
    FIRST_FLOWER = "first_flower"
    CUT = "cut"
    ENDED = "ended"


@dataclass(frozen=True, slots=True)
class StageDate:
    """When a stage was or will be reached, how that is known, and the range.

    ``source`` is the key of the figure used, empty for an observation;
    ``unverified`` where that figure was not seen in print.
    """

    name: StageName
    on: dt.date | None
    how: How
    early: dt.date | None = None
    late: dt.date | None = None
    source: str = ""
    unverified: bool = False


@dataclass(frozen=True, slots=True)
class CoverDays:
    """Days by what the ground carried, weighted by area. [d]

    ``living + cash + residue + bare + not_yet`` is the season's length.
    ``soil_cover_days`` adds up the share of soil covered each day, and
    ``days_at_least_30`` the days with 30 % of the soil covered or more.
    """

    living: float
    cash: float
    residue: float
    bare: float
    not_yet: float
    soil_cover_days: float
    days_at_least_30: float

    @property
    def counted(self) -> float:
        """Return the days that have passed. [d]"""
        return self.living + self.cash + self.residue + self.bare

    @property
    def covered(self) -> float:
        """Return the days with something on the ground. [d]"""
        return self.living + self.cash + self.residue


@dataclass(frozen=True, slots=True)
class WeedWindow:
    """From canopy closure to the day neither canopy nor mulch holds weeds.

    ``living`` has one span for each closed canopy: a cut that grew back opens
    another. ``days`` are those in the season up to the day counted to; the
    mulch counts while its hold is moderate or better.
    ``reduction`` is the share by which weed mass was less [0 to 0.95], by the
    mass at the end.
    """

    living: tuple[Span, ...]
    start_how: How
    start_early: dt.date | None
    start_late: dt.date | None
    mulch: MulchHold | None
    days: Between
    days_likely: float
    reduction: float | None
    still_open: bool
    why_none: NoWindow | None = None


@dataclass(frozen=True, slots=True)
class SeedUse:
    """Seed that went into a planting: one lot of one kind.

    ``rate_pls_kg_m2`` counts pure live seed over the kind's own share of the
    area's full rate; ``bulk_rate_kg_m2`` is the weight over the area.
    ``handbook``, ``common_practice`` and ``farm_own`` are full rates for the same
    method; the verdict is against the farm's own where there is one.
    """

    planting_id: int
    field_id: int
    kind_slug: str
    kind_name: str
    lot: LotFacts | None
    share: float
    area_m2: float
    method: Method
    seed_kg: float | None
    pls: float | None
    pls_kg: float | None
    rate_pls_kg_m2: float | None
    bulk_rate_kg_m2: float | None
    handbook_kg_m2: Between | None
    common_practice_kg_m2: Between | None
    sources: tuple[str, ...]
    verdict: Verdict
    farm_own_kg_m2: Between | None = None


@dataclass(frozen=True, slots=True)
class Segment:
    """Days that carried the same on the same share of the field."""

    first: dt.date
    last: dt.date
    ground: Ground
    share: float


@dataclass(frozen=True, slots=True)
class Tick:
    """A mark on the strip."""

    on: dt.date
    kind: TickKind
    how: How
    planting_id: int


@dataclass(frozen=True, slots=True)
class Strip:
    """One field's season as a row: segments may overlap where the field is shared."""

    segments: tuple[Segment, ...]
    ticks: tuple[Tick, ...]


@dataclass(frozen=True, slots=True)
class PlantingSeason:
    """One planting in this season.

    ``living_days`` and ``residue_days`` are of the stand's own ground, not
    weighted by the field's area. [d]
    """

    planting: PlantingFacts
    field_name: str
    alive: Span | None
    stages: tuple[StageDate, ...]
    living_days: float
    residue_days: float
    weed_window: WeedWindow
    seed: tuple[SeedUse, ...]
    choices: tuple[ResidueChoice, ...]
    cautions: tuple[str, ...]
    doubts: tuple[Doubt, ...]

    def stage(self, name: StageName) -> StageDate | None:
        """Return one stage of the stand, or None where it has none."""
        return next((row for row in self.stages if row.name is name), None)


@dataclass(frozen=True, slots=True)
class FieldSeason:
    """One field in this season; ``weed_days`` are weighted by area. [d]"""

    ledger: FieldLedger
    cover: CoverDays
    weed_days: Between
    weed_days_likely: float
    plantings: tuple[PlantingSeason, ...]
    strip: Strip
    kinds: tuple[str, ...]
    residues: tuple[Residue, ...]
    seed_kg: float


@dataclass(frozen=True, slots=True)
class FieldSeed:
    """Seed of one lot on one field. [kg]"""

    field_id: int
    field_name: str
    seed_kg: float


@dataclass(frozen=True, slots=True)
class LotUse:
    """Where the seed of one lot went this season."""

    lot: LotFacts
    planted: tuple[FieldSeed, ...]
    planted_kg: float


@dataclass(frozen=True, slots=True)
class KindTotal:
    """One kind over the farm: seed sown, area sown and living days by area."""

    slug: str
    name: str
    plantings: int
    area_m2: float
    seed_kg: float
    sources: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class SeasonTotals:
    """The farm as one piece of land; days weighted by area."""

    area_m2: float
    fields: int
    plantings: int
    cover: CoverDays
    weed_days: Between
    weed_days_likely: float
    seed_kg: float
    left_on_top_m2: float
    worked_in_m2: float
    kinds: tuple[KindTotal, ...]


@dataclass(frozen=True, slots=True)
class FrostLine:
    """Last spring and first fall day at or below a temperature, this season."""

    temp_c: float
    last_spring: dt.date | None
    first_fall: dt.date | None


@dataclass(frozen=True, slots=True)
class FrostSummary:
    """Frosts read at the station this season."""

    lines: tuple[FrostLine, ...]
    lowest_c: float | None
    lowest_on: dt.date | None


@dataclass(frozen=True, slots=True)
class SeasonPage:
    """One farm, one season: everything the season report is printed from.

    ``missing_days`` are days of the record within the counted season without
    both temperatures and rain; ``days_without_weather`` are counted days
    outside the record altogether.
    """

    season: Span
    counted_to: dt.date | None
    station: str
    weather_first: dt.date | None
    weather_last: dt.date | None
    missing_days: int
    days_without_weather: int
    fields: tuple[FieldSeason, ...]
    totals: SeasonTotals
    lots: tuple[LotUse, ...]
    frost: FrostSummary | None
    assumptions: tuple[Assumption, ...]
    sources: tuple[str, ...]
