"""What an inspector would leaf through, row by row, as plain values."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass

Day = dt.date | None


@dataclass(frozen=True, slots=True)
class Ground:
    """A piece of land and what is said of its status."""

    id: int
    name: str
    area_m2: float
    status: str
    status_since: Day = None
    parent_id: int | None = None
    has_outline: bool = True


@dataclass(frozen=True, slots=True)
class Statement:
    """What somebody signed for: a period, and a substance or none."""

    id: int
    field_id: int
    first: dt.date
    last: dt.date
    substance: str = ""
    last_used_on: Day = None
    signer: str = ""


@dataclass(frozen=True, slots=True)
class Side:
    """One side of a field. [m]"""

    id: int
    field_id: int
    side: str
    neighbour: str
    buffer_m: float | None = None
    barrier: str = ""


@dataclass(frozen=True, slots=True)
class Lot:
    """A seed lot as its tag and papers say. [kg]"""

    id: int
    kind: str
    number: str
    supplier: str
    received_on: dt.date
    received_kg: float
    status: str
    treatment: str = ""
    certificate: str = ""
    tested_on: Day = None
    purity: float | None = None
    germination: float | None = None
    bought: bool = True
    inoculant: str = ""
    inoculant_until: Day = None

    @property
    def name(self) -> str:
        """Return the lot as one would call it."""
        return f"{self.kind} {self.number}"


@dataclass(frozen=True, slots=True)
class Moved:
    """Seed of a lot that came later or left unsown; below zero where it left. [kg]"""

    id: int
    lot_id: int
    on: dt.date
    what: str
    signed_kg: float


@dataclass(frozen=True, slots=True)
class Search:
    """A search for organic seed: whom was asked, and when."""

    id: int
    lot_id: int | None
    kind: str
    on: dt.date
    traits: str
    reason: str
    asked: tuple[tuple[str, dt.date], ...] = ()


@dataclass(frozen=True, slots=True)
class Line:
    """One kind in a planting. [kg]"""

    kind: str
    legume: bool
    lot_id: int | None
    seed_kg: float | None = None


@dataclass(frozen=True, slots=True)
class Stand:
    """One sowing or setting-out. [m²]"""

    id: int
    field_id: int
    area_m2: float
    purpose: str
    sown_on: Day
    planned_on: Day = None
    lines: tuple[Line, ...] = ()
    method: str = ""
    inoculated: bool = False
    next_crop_on: Day = None

    @property
    def name(self) -> str:
        """Return the kinds sown."""
        return " + ".join(line.kind for line in self.lines)


@dataclass(frozen=True, slots=True)
class EndOf:
    """How a stand was ended."""

    id: int
    stand_id: int
    on: dt.date
    method: str
    residue: str
    over: bool = True
    reason: str = ""
    tool: str = ""
    tarp_removed_on: Day = None


@dataclass(frozen=True, slots=True)
class Product:
    """Something that may be put on; intervals as typed from its label."""

    id: int
    name: str
    type: str
    approval: str = ""
    approved_on: Day = None
    approved_until: Day = None
    restricted: bool = False
    registration: str = ""
    reentry_hours: float | None = None
    preharvest_days: float | None = None
    plant_back_months: float | None = None


@dataclass(frozen=True, slots=True)
class Put:
    """A product put on a piece of land. [kg or m³ by ``measure``, m²]"""

    id: int
    product_id: int
    field_id: int
    on: dt.date
    amount: float
    measure: str
    area_m2: float
    stand_id: int | None = None
    product_lot: str = ""
    started_at: dt.time | None = None
    finished_at: dt.time | None = None
    worked_in_on: Day = None
    method: str = ""
    done_by: str = ""
    licence: str = ""
    target: str = ""
    equipment: str = ""
    posted_at: dt.datetime | None = None
    written_on: Day = None

    @property
    def ended_at(self) -> dt.datetime:
        """Return the hour it was finished; the day's end where nobody wrote it."""
        return dt.datetime.combine(self.on, self.finished_at or dt.time(23, 59))


@dataclass(frozen=True, slots=True)
class Heap:
    """A compost batch with its daily log. [°C]"""

    id: int
    name: str
    method: str
    started_on: dt.date
    ratio: float | None = None
    days: tuple[tuple[dt.date, float | None, bool], ...] = ()


@dataclass(frozen=True, slots=True)
class Crop:
    """A harvest lot. [kg]"""

    id: int
    code: str
    crop: str
    field_id: int
    stand_id: int | None
    on: dt.date
    mass_kg: float
    use: str
    status: str
    from_buffer: bool = False
    touches_soil: bool | None = None


@dataclass(frozen=True, slots=True)
class Kept:
    """Part of a harvest lot put into a store. [kg]"""

    id: int
    lot_id: int
    on: dt.date
    place: str
    mass_kg: float


@dataclass(frozen=True, slots=True)
class Gone:
    """Part of a harvest lot sold or used. [kg]"""

    id: int
    lot_id: int
    on: dt.date
    buyer: str
    mass_kg: float
    status: str
    invoice: str = ""


@dataclass(frozen=True, slots=True)
class CountedStock:
    """What a count found: ``of`` is the noun, ``id_of`` the record. [kg]"""

    id: int
    of: str
    id_of: int
    on: dt.date
    mass_kg: float


@dataclass(frozen=True, slots=True)
class Cleaned:
    """A machine or store cleaned."""

    id: int
    machine: str
    on: dt.date


@dataclass(frozen=True, slots=True)
class Mishap:
    """Something that went wrong, and who was told."""

    id: int
    field_id: int | None
    what: str
    on: dt.date
    done_about_it: str
    told_to: str


@dataclass(frozen=True, slots=True)
class Flock:
    """Animals on a field."""

    id: int
    field_id: int
    stand_id: int | None
    animals: str
    in_on: dt.date
    out_on: Day = None
    label_checked: bool = False


@dataclass(frozen=True, slots=True)
class Partner:
    """A supplier or contractor."""

    id: int
    name: str
    address: str
    certificate: str = ""
    certificate_until: Day = None
    verified_on: Day = None


@dataclass(frozen=True, slots=True)
class Entry:
    """A record as such: when it happened, when it was written, by whom done."""

    noun: str
    id: int
    label: str
    on: dt.date
    written_on: dt.date
    done_by: str
    field_id: int | None = None
