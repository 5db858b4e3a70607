"""Pieces of land, what is said of them, and their sides."""

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
