"""What a piece of land, or a label, takes up on the sheet."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from farm.outlines import Ring


@dataclass(frozen=True, slots=True)
class Box:
    """Level and upright edges; down is further from the top."""

    left: float
    top: float
    right: float
    foot: float

    @classmethod
    def around(cls, rings: Sequence[Ring]) -> Box:
        across = [x for ring in rings for x, _y in ring]
        down = [y for ring in rings for _x, y in ring]
        return cls(min(across), min(down), max(across), max(down))

    def lies_on(self, other: Box) -> bool:
        return (
            self.left < other.right
            and other.left < self.right
            and self.top < other.foot
            and other.top < self.foot
        )

    def holds(self, other: Box) -> bool:
        return (
            self.left <= other.left
            and other.right <= self.right
            and self.top <= other.top
            and other.foot <= self.foot
        )
