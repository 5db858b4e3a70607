"""What is new, and what is no more, between one season and the next."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum


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
class Changed:
    """One part of the farm: what came and what went, by name."""

    part: Part
    came: tuple[str, ...]
    went: tuple[str, ...]
