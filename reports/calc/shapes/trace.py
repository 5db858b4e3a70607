"""The way from seed to sale and back, and what came in against what went out."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass
from enum import StrEnum


class Link(StrEnum):
    """What stands at one place of the way, in the order goods go."""

    SUPPLIER = "supplier"
    SEED = "seed"
    INPUT = "input"
    PUT_ON = "put_on"
    FIELD = "field"
    PLANTING = "planting"
    ENDED = "ended"
    HARVEST = "harvest"
    STORE = "store"
    SALE = "sale"


class Missing(StrEnum):
    """A link that ought to stand there and does not."""

    SUPPLIER = "supplier"
    CERTIFICATE = "certificate"
    SEED_LOT = "seed_lot"
    PLANTING = "planting"
    STORE_OR_SALE = "store_or_sale"
    INVOICE = "invoice"
    INPUT_LOT = "input_lot"


class Goods(StrEnum):
    """What a balance is struck of."""

    SEED = "seed"
    INPUTS = "inputs"
    PRODUCT = "product"


@dataclass(frozen=True, slots=True)
class Stop:
    """One place of the way: the record, what it is called, its day."""

    link: Link
    noun: str
    id: int
    name: str
    on: dt.date | None = None

    @property
    def key(self) -> tuple[str, int]:
        """Return the record's noun and number."""
        return self.noun, self.id


@dataclass(frozen=True, slots=True)
class Gap:
    """A missing link and the record that would name it."""

    missing: Missing
    at: Stop


@dataclass(frozen=True, slots=True)
class Trace:
    """Every stop reached from one lot, back and forward, and what is missing."""

    start: Stop
    stops: tuple[Stop, ...]
    steps: tuple[tuple[Stop, Stop], ...]
    gaps: tuple[Gap, ...]


@dataclass(frozen=True, slots=True)
class Balance:
    """What came in and went out of one lot in a period. [kg]

    ``counted_kg`` is what a count found last in the period, None where nobody
    counted; the variance is counted less reckoned.
    """

    goods: Goods
    noun: str
    id: int
    name: str
    opening_kg: float
    in_kg: float
    out_kg: float
    counted_kg: float | None
    tolerance: float

    @property
    def reckoned_kg(self) -> float:
        """Return what ought to be there. [kg]"""
        return round(self.opening_kg + self.in_kg - self.out_kg, 6)

    @property
    def variance_kg(self) -> float | None:
        """Return what is there less what ought to be. [kg]"""
        if self.counted_kg is None:
            return None
        return self.counted_kg - self.reckoned_kg

    @property
    def is_within(self) -> bool:
        """Tell whether it adds up within the farm's tolerance and is not below zero."""
        handled = self.opening_kg + self.in_kg
        slack = self.tolerance * handled
        below = self.reckoned_kg < -slack
        return not below and abs(self.variance_kg or 0.0) <= slack
