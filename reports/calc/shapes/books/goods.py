"""Harvest lots, where they lay and where they went, and counts."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass


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
