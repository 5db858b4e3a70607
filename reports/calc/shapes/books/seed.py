"""Seed lots, searches, and whom seed came from."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass

Day = dt.date | None


@dataclass(frozen=True, slots=True)
class Part:
    """One kind of a mix, with its germination by the tag."""

    kind: str
    germination: float | None = None


@dataclass(frozen=True, slots=True)
class Lot:
    """A seed lot as its tag and papers say. [kg]

    ``engineered`` are its kinds of which engineered varieties are sold; ``non_gmo``
    tells by what it is shown to be none of them, and ``non_gmo_on`` of which day.
    ``noxious_told`` is None for vegetables, whose tags need not tell of weeds.
    """

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
    variety: str = ""
    is_stock: bool = False
    parts: tuple[Part, ...] = ()
    saved: bool = False
    engineered: tuple[str, ...] = ()
    non_gmo: str = ""
    non_gmo_on: Day = None
    noxious_told: bool | None = None

    @property
    def kinds(self) -> tuple[str, ...]:
        """Return every kind in it, each once."""
        return tuple(dict.fromkeys(part.kind for part in self.parts)) or (self.kind,)

    @property
    def is_tested(self) -> bool:
        """Return whether the tag tells purity, germination and test of every kind."""
        tag = [self.purity, self.germination]
        if self.parts:
            tag = [part.germination for part in self.parts]
        return None not in {*tag, self.tested_on}

    def called(self, kinds: tuple[str, ...]) -> str:
        """Return these kinds of the lot as one would call them."""
        return f"{' + '.join(kinds)} {self.number}"

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
    answers: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Partner:
    """A supplier or contractor."""

    id: int
    name: str
    address: str
    certificate: str = ""
    certificate_until: Day = None
    verified_on: Day = None
    verified_how: str = ""
    is_contractor: bool = False
