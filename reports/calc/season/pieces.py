"""The parts of a stand that each ended their own way."""

from __future__ import annotations

from dataclasses import dataclass

from reports.calc.season.endings import buried_on, killed_on, taken_on
from reports.calc.season.reckoning import Reckoning
from reports.calc.shapes.ledger import End, PlantingFacts

FOR_EVER = 10**9  # d, stands for the end of what still lives
LEFT_OVER = 0.001  # share of a stand, less than this left after its ends is nothing


@dataclass(slots=True)
class Piece:
    """A part of a stand that went the same way.

    Days are positions in the station's calendar: ``dead`` the day it ended, None
    while it lives. What it left lies on top until it is ``taken`` away or grazed, or
    ``buried``; cover seen after grazing still counts until it is buried.
    """

    share: float
    dead: int | None = None
    buried: int = FOR_EVER
    taken: int = FOR_EVER
    end: End | None = None

    @property
    def on_top_until(self) -> int:
        """Return the day from which the residue left is no longer all there. [d]"""
        return min(self.buried, self.taken)

    @property
    def gone(self) -> int:
        """Return the day from which it lives no more. [d]"""
        return FOR_EVER if self.dead is None else self.dead


def pieces_of(
    planting: PlantingFacts, ends: list[End], reckoning: Reckoning
) -> tuple[Piece, ...]:
    """Return the parts of a stand that went each its own way, by its ends in order.

    Frost seen to have killed it ends whatever still lived.
    """
    index = reckoning.station.index
    killed = killed_on(planting)
    left, out = 1.0, []
    for end in ends:
        share = min(end.area_m2 / planting.area_m2, left)
        if left - share < LEFT_OVER:
            share = left
        if share <= 0:
            continue
        left -= share
        dead = min(end.on, killed) if killed else end.on
        buried, taken = buried_on(end), taken_on(end)
        out.append(
            Piece(
                share,
                index(dead),
                FOR_EVER if buried is None else index(buried),
                FOR_EVER if taken is None else index(taken),
                end,
            )
        )
    if left > 0:
        out.append(Piece(left, None if killed is None else index(killed)))
    return tuple(out)
