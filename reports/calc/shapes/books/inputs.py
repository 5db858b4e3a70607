"""Products, where they were put, and compost."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass

Day = dt.date | None


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
    nitrogen_share: float | None = None


@dataclass(frozen=True, slots=True)
class Delivered:
    """A lot of a product as it came. [kg or m³ by ``measure``]"""

    id: int
    product_id: int
    number: str
    supplier: str
    on: dt.date
    amount: float
    measure: str
    invoice: str = ""


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
class Licence:
    """A licence to put on restricted-use products, over the days printed on it."""

    id: int
    number: str
    state: str
    since: Day
    until: dt.date
    holder: str = ""


@dataclass(frozen=True, slots=True)
class Heap:
    """A compost batch with its daily log. [°C]"""

    id: int
    name: str
    method: str
    started_on: dt.date
    ratio: float | None = None
    days: tuple[tuple[dt.date, float | None, bool], ...] = ()
