"""What was sown, how it ended, and animals on it."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass

Day = dt.date | None


@dataclass(frozen=True, slots=True)
class Line:
    """One kind in a planting. [kg]"""

    kind: str
    legume: bool
    lot_id: int | None
    seed_kg: float | None = None
    family: str = ""
    perennial: bool = False


@dataclass(frozen=True, slots=True)
class Stand:
    """One sowing or setting-out. [m², m deep]"""

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
    up_on: Day = None
    killed_on: Day = None
    depth_m: float | None = None
    done_by: str = ""

    @property
    def name(self) -> str:
        """Return the kinds sown."""
        return " + ".join(line.kind for line in self.lines)


@dataclass(frozen=True, slots=True)
class EndOf:
    """How a stand was ended. [m²]"""

    id: int
    stand_id: int
    on: dt.date
    method: str
    residue: str
    over: bool = True
    reason: str = ""
    tool: str = ""
    tarp_removed_on: Day = None
    done_by: str = ""
    area_m2: float = 0.0


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
