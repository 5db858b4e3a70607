"""A planting as it stood on the ground: when it came up, and how it ended."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass

from reports.calc.growth import as_seen, closed_again
from reports.calc.season.doubts import doubts_of
from reports.calc.season.pieces import FOR_EVER, Piece, pieces_of
from reports.calc.season.reckoning import Reckoning
from reports.calc.shapes.basics import How
from reports.calc.shapes.ledger import End, PlantingFacts, Purpose
from reports.calc.shapes.season import Doubt, StageDate


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
    doubts = doubts_of(planting, stages, reckoning.today)
    sown = planting.sown_on
    if sown is None or sown > reckoning.today:
        return Stand(planting, stages, stages, None, (), (), (), doubts, FOR_EVER)
    ends = sorted((end for end in planting.ends if end.on >= sown), key=_on)
    index = reckoning.station.index
    up = None if stages[0].on is None else index(stages[0].on)
    cuts = tuple(index(end.on) for end in ends if end.regrows)
    pieces = pieces_of(planting, [e for e in ends if not e.regrows], reckoning)
    gone = max((piece.gone for piece in pieces), default=FOR_EVER)
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


def _on(end: End) -> dt.date:
    return end.on
