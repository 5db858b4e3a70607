"""When a piece of a cover crop holds weeds: under closed canopy, then as mulch."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from reports.calc.season.decays import HORIZON_DAYS
from reports.calc.season.pieces import FOR_EVER, Piece
from reports.calc.season.reckoning import Reckoning
from reports.calc.season.remains import Remains
from reports.calc.season.stands import Stand

EARLY, LIKELY, LATE = 0, 1, 2
Spell = tuple[int, int]


@dataclass(slots=True)
class Held:
    """Spells in which a piece holds weeds: fewest, likely and most days.

    Spells are positions in the calendar, the last day not counted in.
    """

    fewest: tuple[Spell, ...]
    likely: tuple[Spell, ...]
    most: tuple[Spell, ...]

    def __iter__(self) -> Iterator[tuple[Spell, ...]]:
        return iter((self.fewest, self.likely, self.most))


HeldByPiece = Mapping[int, Held]
NOT_HELD = Held((), (), ())


def held_by_piece(stand: Stand, left: Sequence[Remains]) -> HeldByPiece:
    """Return when each piece of a stand holds weeds, by the piece's id."""
    by_piece = {id(row.piece): row for row in left}
    return {
        id(piece): _held(stand, piece, by_piece.get(id(piece)))
        for piece in stand.pieces
    }


def _held(stand: Stand, piece: Piece, remains: Remains | None) -> Held:
    """Return when a piece of a cover crop holds weeds, alive and then as mulch."""
    if stand.cash or stand.up is None:
        return NOT_HELD
    mulch = _mulch(piece, remains)
    fewest, likely, most = [], [], []
    for spell in stand.closures:
        stop = min(FOR_EVER if spell.cut is None else spell.cut, piece.gone)
        fewest.append((spell.late, stop))
        likely.append((spell.likely, stop))
        most.append((spell.early, stop))
    if mulch is not None:
        start = piece.gone
        fewest.append((start, mulch[EARLY]))
        likely.append((start, mulch[LIKELY]))
        most.append((start, mulch[LATE]))
    return Held(tuple(fewest), tuple(likely), tuple(most))


def held_days(spells: Sequence[Spell], reckoning: Reckoning) -> int:
    """Return the counted days of the season that lie in any of the spells."""
    first = reckoning.offset
    last = first + reckoning.counted
    total, reached = 0, first
    for start, stop in sorted(spells) if len(spells) > 1 else spells:
        begin, end = max(start, reached), min(stop, last)
        if end > begin:
            total += end - begin
            reached = end
    return total


def lies_on_top(remains: Remains) -> bool:
    """Return whether what an ended piece left lay on top at all."""
    return remains.piece.on_top_until > remains.dead


def _mulch(piece: Piece, remains: Remains | None) -> tuple[int, int, int] | None:
    if remains is None or remains.lasts is None or not lies_on_top(remains):
        return None
    stop = piece.on_top_until
    early, likely, late = (
        min(remains.dead + (HORIZON_DAYS if days is None else days), stop)
        for days in remains.lasts.moderate
    )
    return early, likely, late
