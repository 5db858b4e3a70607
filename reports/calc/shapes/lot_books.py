"""What came to each lot and left it, as a running balance."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass
from enum import StrEnum

# Scales and rounding. [kg]
SCALES_KG = 0.005


class Entry(StrEnum):
    """What an entry of a lot's book is; on one day they come in this order."""

    CAME = "came"
    RECEIVED = "received"
    BROUGHT_BACK = "brought_back"
    SOWN = "sown"
    RETURNED = "returned"
    PASSED_ON = "passed_on"
    DISCARDED = "discarded"
    COUNTED = "counted"


@dataclass(frozen=True, slots=True)
class Event:
    """One thing written down of a lot; a count holds the weight found. [kg]"""

    on: dt.date
    entry: Entry
    mass_kg: float
    where: str = ""


@dataclass(frozen=True, slots=True)
class LotStory:
    """A lot and everything written down of its weight. [0–1, kg]"""

    id: int
    label: str
    kind: str
    kind_name: str
    supplier: str
    is_organic: bool
    has_search: bool
    pls: float | None
    tested_on: dt.date | None
    events: tuple[Event, ...]
    # Of a mix, every kind by name with its pure live seed in the whole. [0–1]
    mixed: tuple[tuple[str, float | None], ...] = ()


@dataclass(frozen=True, slots=True)
class Line:
    """An entry with what it changed and what was left after it. [kg]

    ``change_kg`` of a count is its variance: found less expected.
    """

    event: Event
    change_kg: float
    left_kg: float


@dataclass(frozen=True, slots=True)
class Balance:
    """Weights of a period. [kg]

    ``opening + came - sown - gone + variance`` is ``closing``.
    """

    opening_kg: float
    came_kg: float
    sown_kg: float
    gone_kg: float
    variance_kg: float
    closing_kg: float
    counts: int


@dataclass(frozen=True, slots=True)
class LotBook:
    """One lot in a period."""

    story: LotStory
    balance: Balance
    lines: tuple[Line, ...]
    falls_below_zero: bool


@dataclass(frozen=True, slots=True)
class KindBook:
    """One kind in a period: its lots added up, and what mixes hold of it.

    ``live_kg`` is the pure live seed left by the tags, in mixes too; None where a tag
    is silent. A mix is a kind of its own, and its live seed is told under its parts.
    """

    kind_name: str
    balance: Balance
    lots: tuple[LotBook, ...]
    live_kg: float | None = None
    in_mixes: tuple[InMix, ...] = ()

    @property
    def is_off(self) -> bool:
        """Return whether a lot fell below nothing, or a count found another weight."""
        return any(
            one.falls_below_zero or abs(one.balance.variance_kg) > SCALES_KG
            for one in self.lots
        )


@dataclass(frozen=True, slots=True)
class InMix:
    """What is left of a mix, and of one kind in it. [kg]"""

    lot: int
    label: str
    left_kg: float
    live_kg: float | None
