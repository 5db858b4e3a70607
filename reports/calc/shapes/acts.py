"""Acts that can hurt someone, and what a farm is told at the moment it chooses one."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum


class Act(StrEnum):
    """What is about to be done."""

    GRAZE = "graze"
    FEED = "feed"
    SPRAY = "spray"
    BURN = "burn"
    MACHINE = "machine"
    AFTER_SEED = "after_seed"
    MANURE = "manure"


@dataclass(frozen=True, slots=True)
class Warned:
    """An act with the cautions that its kinds add, and where they come from."""

    act: Act
    kinds: tuple[str, ...]
    sources: tuple[str, ...]
