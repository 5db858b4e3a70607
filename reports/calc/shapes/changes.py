"""What is new, and what is no more, between one season and the next."""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import StrEnum
from types import MappingProxyType


class Part(StrEnum):
    """What may change from one season to the next."""

    LAND = "land"
    STATUS = "status"
    KINDS = "kinds"
    INPUTS = "inputs"
    SOWINGS = "sowings"
    ENDINGS = "endings"
    SHEETS = "sheets"
    SUPPLIERS = "suppliers"
    PEOPLE = "people"


@dataclass(frozen=True, slots=True)
class Use:
    """What the books of one season hold under one name.

    ``noun`` and ``record`` name the record that tells of it, or the first of them;
    ``noun`` is the word of its address.
    """

    noun: str
    record: int
    first: dt.date
    times: int = 1
    area_m2: float = 0.0
    mass_kg: float = 0.0
    volume_m3: float = 0.0
    status: str = ""

    def and_then(self, later: Use) -> Use:
        """Return both as one: the first record, and what they add up to."""
        return Use(
            self.noun,
            self.record,
            self.first,
            self.times + later.times,
            self.area_m2 + later.area_m2,
            self.mass_kg + later.mass_kg,
            self.volume_m3 + later.volume_m3,
            self.status,
        )


@dataclass(frozen=True, slots=True)
class Changed:
    """One part of the farm: what came and what went, by name, and how much it was."""

    part: Part
    came: tuple[str, ...]
    went: tuple[str, ...]
    uses: Mapping[str, Use] = field(default_factory=lambda: MappingProxyType({}))
