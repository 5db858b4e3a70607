"""The weed-suppression window: closed canopy, then what the mulch still holds."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from reports.calc import weeds
from reports.calc.season.decays import HORIZON_DAYS
from reports.calc.season.ground import Part
from reports.calc.season.reckoning import Reckoning
from reports.calc.season.remains import Remains
from reports.calc.season.stands import FOR_EVER, Piece, Stand
from reports.calc.shapes.basics import Between, How, Span
from reports.calc.shapes.choice import ResidueChoice
from reports.calc.shapes.season import NoWindow, WeedWindow

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
        stop = min(FOR_EVER if spell.cut is None else spell.cut, _dead(piece))
        fewest.append((spell.late, stop))
        likely.append((spell.likely, stop))
        most.append((spell.early, stop))
    if mulch is not None:
        start = _dead(piece)
        fewest.append((start, mulch[EARLY]))
        likely.append((start, mulch[LIKELY]))
        most.append((start, mulch[LATE]))
    return Held(tuple(fewest), tuple(likely), tuple(most))


def weed_window(
    stand: Stand,
    remains: Sequence[Remains],
    choices: Sequence[ResidueChoice],
    held: HeldByPiece,
    reckoning: Reckoning,
) -> WeedWindow:
    """Return the window of one planting, its days those of its own ground."""
    fewest = likely = most = 0.0
    for piece in stand.pieces:
        spells = held[id(piece)]
        fewest += piece.share * _days(spells.fewest, reckoning)
        likely += piece.share * _days(spells.likely, reckoning)
        most += piece.share * _days(spells.most, reckoning)
    living = _living(stand, reckoning)
    first = stand.stages[1]
    last = remains[-1] if remains and not stand.cash else None
    on_top = choices[-1].on_top if choices and last and _lies_on_top(last) else None
    return WeedWindow(
        living=living,
        start_how=first.how if living else How.UNKNOWN,
        start_early=first.early if living else None,
        start_late=first.late if living else None,
        mulch=on_top.hold if on_top else None,
        days=Between(fewest, most),
        days_likely=likely,
        reduction=_reduction(last) if last else None,
        still_open=bool(living) and stand.gone == FOR_EVER,
        why_none=None if living else _why_none(stand, reckoning),
    )


def weed_days(
    parts: Sequence[Part], held: HeldByPiece, reckoning: Reckoning
) -> tuple[Between, float]:
    """Return a field's held days, weighted by area and counted once. [d]"""
    totals = [0.0, 0.0, 0.0]
    for part in parts:
        spells: tuple[list[Spell], ...] = ([], [], [])
        for row in part.tenancies:
            for gathered, more in zip(spells, held[id(row.piece)], strict=True):
                gathered.extend(more)
        for place, gathered in enumerate(spells):
            totals[place] += part.width * _days(gathered, reckoning)
    return Between(totals[EARLY], totals[LATE]), totals[LIKELY]


def _mulch(piece: Piece, remains: Remains | None) -> tuple[int, int, int] | None:
    if remains is None or remains.lasts is None or not _lies_on_top(remains):
        return None
    stop = piece.on_top_until
    early, likely, late = (
        min(remains.dead + (HORIZON_DAYS if days is None else days), stop)
        for days in remains.lasts.moderate
    )
    return early, likely, late


def _lies_on_top(remains: Remains) -> bool:
    return remains.piece.on_top_until > remains.dead


def _living(stand: Stand, reckoning: Reckoning) -> tuple[Span, ...]:
    if stand.cash or stand.up is None:
        return ()
    day = reckoning.station.day
    today = reckoning.station.index(reckoning.today)
    return tuple(
        Span(day(spell.likely), day(stop - 1))
        for spell in stand.closures
        if (stop := min(_until(spell.cut), stand.gone, today + 1)) > spell.likely
    )


def _why_none(stand: Stand, reckoning: Reckoning) -> NoWindow:
    if stand.cash:
        return NoWindow.NOT_A_COVER
    if stand.up is None and not stand.pieces:
        return NoWindow.NOT_SOWN
    if not stand.closures:
        return NoWindow.CLOSURE_UNKNOWN
    if stand.gone <= stand.closures[0].likely:
        return NoWindow.ENDED_BEFORE_CLOSURE
    return NoWindow.NOT_YET_CLOSED


def _reduction(remains: Remains) -> float | None:
    likely, makeup = remains.mass.likely, remains.makeup
    if likely is None or makeup is None:
        return None
    return weeds.biomass_reduction(mass_kg_m2=likely, grass=makeup.grass)


def _days(spells: Sequence[Spell], reckoning: Reckoning) -> int:
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


def _dead(piece: Piece) -> int:
    return FOR_EVER if piece.dead is None else piece.dead


def _until(cut: int | None) -> int:
    return FOR_EVER if cut is None else cut
