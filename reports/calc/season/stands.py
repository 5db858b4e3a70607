"""A planting as it stood on the ground: when it came up, and how it ended."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass

from reports.calc.growth import as_seen, closed_again
from reports.calc.season.reckoning import Reckoning
from reports.calc.shapes.basics import How
from reports.calc.shapes.ledger import (
    End,
    PlantingFacts,
    Purpose,
    Residue,
    Seen,
)
from reports.calc.shapes.season import Doubt, StageDate

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


@dataclass(slots=True)
class Closure:
    """A spell of closed canopy: from when, and the cut that ended it if any."""

    early: int
    likely: int
    late: int
    how: How
    cut: int | None


@dataclass(slots=True)
class Stand:
    """A planting on the ground; ``up`` is None where it never stood.

    ``stages`` run on past its end, ``reached`` are those it came to.
    ``gone`` is the day of the calendar from which none of it lives.
    """

    planting: PlantingFacts
    stages: tuple[StageDate, ...]
    reached: tuple[StageDate, ...]
    up: int | None
    cuts: tuple[int, ...]
    closures: tuple[Closure, ...]
    pieces: tuple[Piece, ...]
    doubts: tuple[Doubt, ...]
    gone: int

    @property
    def cash(self) -> bool:
        """Return whether it is a cash crop."""
        return self.planting.purpose is Purpose.CASH


def stand_of(planting: PlantingFacts, reckoning: Reckoning) -> Stand:
    """Return how a planting stood, its days as positions in the calendar."""
    stages = _stages(planting, reckoning)
    doubts = _doubts(planting, stages, reckoning.today)
    sown = planting.sown_on
    if sown is None or sown > reckoning.today:
        return Stand(planting, stages, stages, None, (), (), (), doubts, FOR_EVER)
    ends = sorted((end for end in planting.ends if end.on >= sown), key=_on)
    index = reckoning.station.index
    up = None if stages[0].on is None else index(stages[0].on)
    cuts = tuple(index(end.on) for end in ends if end.regrows)
    pieces = _pieces(planting, [e for e in ends if not e.regrows], reckoning)
    gone = max(map(_last, pieces), default=FOR_EVER)
    return Stand(
        planting,
        stages,
        stages if gone == FOR_EVER else _reached(stages, reckoning.station.day(gone)),
        up,
        cuts,
        _closures(planting, stages, [e.on for e in ends if e.regrows], reckoning),
        pieces,
        doubts,
        gone,
    )


def _reached(stages: tuple[StageDate, ...], gone_on: dt.date) -> tuple[StageDate, ...]:
    """Return the stages with those struck out that the end came before."""
    return tuple(
        [
            row
            if row.on is None or row.on <= gone_on
            else StageDate(row.name, None, How.UNKNOWN)
            for row in stages
        ]
    )


def _stages(planting: PlantingFacts, reckoning: Reckoning) -> tuple[StageDate, ...]:
    return as_seen(
        reckoning.forecast(planting),
        planting=planting,
        assumptions=reckoning.assumptions,
    )


def _closures(
    planting: PlantingFacts,
    stages: tuple[StageDate, ...],
    cuts: list[dt.date],
    reckoning: Reckoning,
) -> tuple[Closure, ...]:
    spells = [stages[1]]
    for cut_on in cuts:
        spells.append(
            closed_again(
                planting=planting,
                cut_on=cut_on,
                stages=stages,
                closed_cover=reckoning.assumptions["closed_cover"],
            )
        )
    index = reckoning.station.index
    return tuple(
        Closure(
            early=index(spell.early or spell.on),
            likely=index(spell.on),
            late=index(spell.late or spell.on),
            how=spell.how,
            cut=index(cut) if cut else None,
        )
        for spell, cut in zip(spells, [*cuts, None], strict=True)
        if spell.on is not None
    )


def _pieces(
    planting: PlantingFacts, ends: list[End], reckoning: Reckoning
) -> tuple[Piece, ...]:
    index = reckoning.station.index
    killed = _killed_on(planting)
    left, out = 1.0, []
    for end in ends:
        share = min(end.area_m2 / planting.area_m2, left)
        if left - share < LEFT_OVER:
            share = left
        if share <= 0:
            continue
        left -= share
        dead = min(end.on, killed) if killed else end.on
        buried, taken = _buried_on(end), _taken_on(end)
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


def _buried_on(end: End) -> dt.date | None:
    if end.residue is Residue.WORKED_IN:
        return end.worked_in_on or end.on
    return end.worked_in_on


def _taken_on(end: End) -> dt.date | None:
    return end.on if end.residue in (Residue.REMOVED, Residue.GRAZED) else None


def _killed_on(planting: PlantingFacts) -> dt.date | None:
    start = planting.start or dt.date.min
    seen = [row for row in planting.observations if row.on >= start]
    killed = [row.on for row in seen if row.seen is Seen.FROST_KILLED]
    if not killed:
        return None
    on = min(killed)
    grown = any(row.seen is Seen.REGROWN and row.on > on for row in seen)
    return None if grown else on


def _doubts(
    planting: PlantingFacts, stages: tuple[StageDate, ...], today: dt.date
) -> tuple[Doubt, ...]:
    sown = planting.sown_on
    doubts = []
    if planting.start is None:
        doubts.append(Doubt.NO_DATE)
    elif sown is None:
        doubts.append(Doubt.PLANNED_NOT_SOWN)
    else:
        if sown > today:
            doubts.append(Doubt.SOWN_AFTER_TODAY)
        if any(row.on < sown for row in planting.observations):
            doubts.append(Doubt.SEEN_BEFORE_SOWN)
        if any(end.on < sown for end in planting.ends):
            doubts.append(Doubt.ENDED_BEFORE_SOWN)
        if stages[0].on is None:
            doubts.append(Doubt.EMERGENCE_UNKNOWN)
    if planting.late_entry:
        doubts.append(Doubt.WRITTEN_LATE)
    return tuple(doubts)


def _last(piece: Piece) -> int:
    return FOR_EVER if piece.dead is None else piece.dead


def _on(end: End) -> dt.date:
    return end.on
