"""What was written down, as plain values: the rows that cross into the workshop."""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum

import numpy as np
from numpy.typing import NDArray

from reports.calc.shapes.basics import Between


class Group(StrEnum):
    """Plant group of a kind, as the weed and nitrogen sources sort them."""

    GRASS = "grass"
    LEGUME = "legume"
    BRASSICA = "brassica"
    BROADLEAF = "broadleaf"


class Purpose(StrEnum):
    """What a planting is for."""

    COVER = "cover"
    CASH = "cash"
    NURSE = "nurse"


class Method(StrEnum):
    """How a planting was set."""

    BROADCAST = "broadcast"
    DRILLED = "drilled"
    TRANSPLANTED = "transplanted"
    FROST_SEEDED = "frost_seeded"
    SELF_SOWN = "self_sown"


class Residue(StrEnum):
    """What became of the stand after it ended."""

    ON_TOP = "on_top"
    WORKED_IN = "worked_in"
    REMOVED = "removed"
    GRAZED = "grazed"


class Ending(StrEnum):
    """How a stand was ended or cut."""

    MOWN = "mown"
    FLAIL_MOWN = "flail_mown"
    ROLLER_CRIMPED = "roller_crimped"
    TILLED_IN = "tilled_in"
    UNDERCUT = "undercut"
    TARPED = "tarped"
    GRAZED = "grazed"
    FROST_KILLED = "frost_killed"
    HAND_CUT = "hand_cut"
    SPRAYED = "sprayed"
    HARVESTED = "harvested"
    BURNED = "burned"


class Material(StrEnum):
    """What a sheet on the ground is made of."""

    POLYETHYLENE = "polyethylene"
    FABRIC = "fabric"
    TARP = "tarp"
    BIODEGRADABLE = "biodegradable"
    PAPER = "paper"
    PVC = "pvc"
    OTHER = "other"


class Seen(StrEnum):
    """What a person saw in the stand."""

    EMERGED = "emerged"
    CANOPY = "canopy"
    FIRST_FLOWER = "first_flower"
    BLOOM = "bloom"
    SEED_SET = "seed_set"
    FROST_KILLED = "frost_killed"
    REGROWN = "regrown"
    WEEDS = "weeds"


@dataclass(frozen=True, slots=True)
class Figure:
    """One agronomic figure of a kind.

    ``low`` and ``high`` are in the workshop's own units: days, kg/m², m, °C,
    °C-days, shares of 1, seeds per kg, m²/kg; month-days as day of year.
    """

    attribute: str
    low: float
    high: float
    source: str
    unverified: bool = False
    farm_own: bool = False
    stage: str = ""

    @property
    def between(self) -> Between:
        """Return the figure's two ends."""
        return Between(self.low, self.high)


@dataclass(frozen=True, slots=True)
class KindFacts:
    """One kind with every figure known of it, the most trusted first."""

    slug: str
    name: str
    botanical: str
    family: str
    group: Group
    figures: Mapping[str, tuple[Figure, ...]]
    cautions: tuple[str, ...] = ()

    def all(self, attribute: str, stage: str = "") -> tuple[Figure, ...]:
        """Return every figure of one attribute; ``stage`` narrows when given."""
        rows = self.figures.get(attribute, ())
        return tuple(row for row in rows if not stage or row.stage == stage)

    def best(self, attribute: str, stage: str = "") -> Figure | None:
        """Return the figure to compute with, or None where nothing is known."""
        rows = self.all(attribute, stage)
        return rows[0] if rows else None

    def spread(self, attribute: str, stage: str = "") -> Between | None:
        """Return the lowest and highest of the verified figures."""
        rows = [row for row in self.all(attribute, stage) if not row.unverified]
        if not rows:
            return None
        return Between(min(row.low for row in rows), max(row.high for row in rows))


@dataclass(frozen=True, slots=True)
class LotFacts:
    """A seed lot as its tag says."""

    id: int
    label: str
    kind_slug: str
    supplier: str
    received_kg: float
    pls: float | None
    organic: bool
    treated: bool


@dataclass(frozen=True, slots=True)
class SeedLine:
    """One kind in a planting: the lot and weight used, and its share of a mix."""

    kind: KindFacts
    lot: LotFacts | None
    seed_kg: float | None
    share: float


@dataclass(frozen=True, slots=True)
class Observation:
    """What was seen on a day; shares are of 1, None where not looked at."""

    on: dt.date
    seen: Seen
    canopy_share: float | None = None
    bloom_share: float | None = None
    ground_cover_share: float | None = None
    weeds_0_to_5: int | None = None


@dataclass(frozen=True, slots=True)
class Sample:
    """Frames cut and weighed: dry matter of the stand that day. [kg/m²]"""

    on: dt.date
    dry_kg_m2: tuple[float, ...]
    nitrogen_share: float | None = None


@dataclass(frozen=True, slots=True)
class End:
    """A stand ended or cut; ``regrows`` says that it was cut to grow back."""

    id: int
    on: dt.date
    area_m2: float
    ending: Ending
    residue: Residue
    regrows: bool = False
    bloom_share: float | None = None
    worked_in_on: dt.date | None = None
    reason: str = ""


@dataclass(frozen=True, slots=True)
class PlantingFacts:
    """One sowing or setting-out, with everything written down about it."""

    id: int
    field_id: int
    area_m2: float
    purpose: Purpose
    method: Method
    sown_on: dt.date | None
    planned_on: dt.date | None
    lines: tuple[SeedLine, ...]
    observations: tuple[Observation, ...] = ()
    samples: tuple[Sample, ...] = ()
    ends: tuple[End, ...] = ()
    next_crop: str = ""
    next_crop_on: dt.date | None = None
    next_crop_transplanted: bool | None = None
    late_entry: bool = False

    @property
    def start(self) -> dt.date | None:
        """Return the day sown, or else the day planned."""
        return self.sown_on or self.planned_on


@dataclass(frozen=True, slots=True)
class ApplicationFacts:
    """One input put on a field."""

    id: int
    field_id: int
    product: str
    type: str
    on: dt.date
    area_m2: float
    amount: float
    unit: str
    worked_in_on: dt.date | None
    analysis: str
    approval: str


@dataclass(frozen=True, slots=True)
class SheetFacts:
    """A film or tarp that lay on a field. [m²]"""

    id: int
    material: Material
    words: str
    area_m2: float
    laid_on: dt.date
    taken_off_on: dt.date | None
    went: str


# Areas of parts are typed with rounding: less than this share is no ground.
ROUNDED = 0.005


@dataclass(frozen=True, slots=True)
class FieldLedger:
    """A piece of land and everything that happened on it.

    ``parts_m2`` is the area told under its own parts: strips, beds and the like.
    """

    id: int
    name: str
    area_m2: float
    status: str
    plantings: tuple[PlantingFacts, ...] = ()
    applications: tuple[ApplicationFacts, ...] = ()
    sheets: tuple[SheetFacts, ...] = ()
    part_of: str = ""
    parts_m2: float = 0.0

    @property
    def is_used(self) -> bool:
        """Return whether anything was sown, put or laid on it."""
        return bool(self.plantings or self.applications or self.sheets)

    @property
    def own_ground_m2(self) -> float:
        """Return the area not told under a part; a farm's total adds these. [m²]"""
        rest = self.area_m2 - self.parts_m2
        return rest if rest > self.area_m2 * ROUNDED else 0.0


@dataclass(frozen=True, slots=True)
class Weather:
    """Daily readings of one station from ``first`` on; NaN where none was taken.

    Three arrays of shape (n,): ``tmin_c`` and ``tmax_c`` [°C], ``rain_mm`` [mm].
    """

    station: str
    first: dt.date
    tmin_c: NDArray[np.float64]
    tmax_c: NDArray[np.float64]
    rain_mm: NDArray[np.float64]

    def index(self, day: dt.date) -> int:
        """Return the position of a day; may lie outside the record."""
        return (day - self.first).days

    def day(self, index: int) -> dt.date:
        """Return the day at a position."""
        return self.first + dt.timedelta(days=index)

    def __len__(self) -> int:
        return len(self.tmin_c)


@dataclass(frozen=True, slots=True)
class Assumption:
    """One of our own choices and the farm's value for it, where it has one."""

    key: str
    value: float
    unit: str
    farm_own: bool = False
