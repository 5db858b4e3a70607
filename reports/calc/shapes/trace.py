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
    INPUT_LOT = "input_lot"
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
    DELIVERY = "delivery"


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
    """What came in and went out of one lot in a period. [kg or m³ by ``measure``]

    ``counted`` is what a count found last in the period, None where nobody
    counted; the variance is counted less reckoned.
    """

    goods: Goods
    noun: str
    id: int
    name: str
    opening: float
    came: float
    went: float
    counted: float | None
    tolerance: float
    measure: str = "mass"

    @property
    def reckoned(self) -> float:
        """Return what ought to be there. [kg or m³]"""
        return round(self.opening + self.came - self.went, 6)

    @property
    def variance(self) -> float | None:
        """Return what is there less what ought to be. [kg or m³]"""
        return None if self.counted is None else self.counted - self.reckoned

    @property
    def variance_share(self) -> float | None:
        """Return the variance as a share of all that was handled. [0 to 1]"""
        handled = self.opening + self.came
        if self.variance is None or handled <= 0:
            return None
        return self.variance / handled

    @property
    def is_within(self) -> bool:
        """Tell whether it adds up within the farm's tolerance and is not below zero."""
        slack = self.tolerance * (self.opening + self.came)
        below = self.reckoned < -slack
        return not below and abs(self.variance or 0.0) <= slack
