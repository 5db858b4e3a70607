"""The weed-suppression window: closed canopy, then what the mulch still holds."""

from __future__ import annotations

from collections.abc import Sequence

from reports.calc import weeds
from reports.calc.season.ground import Part
from reports.calc.season.held import (
    EARLY,
    LATE,
    LIKELY,
    HeldByPiece,
    Spell,
    held_days,
    lies_on_top,
)
from reports.calc.season.pieces import FOR_EVER
from reports.calc.season.reckoning import Reckoning
from reports.calc.season.remains import Remains
from reports.calc.season.stands import Stand
from reports.calc.shapes.basics import Between, How, Span
from reports.calc.shapes.choice import ResidueChoice
from reports.calc.shapes.season import NoWindow, WeedWindow


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
        fewest += piece.share * held_days(spells.fewest, reckoning)
        likely += piece.share * held_days(spells.likely, reckoning)
        most += piece.share * held_days(spells.most, reckoning)
    living = _living(stand, reckoning)
    first = stand.stages[1]
    last = remains[-1] if remains and not stand.cash else None
    on_top = choices[-1].on_top if choices and last and lies_on_top(last) else None
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
            totals[place] += part.width * held_days(gathered, reckoning)
    return Between(totals[EARLY], totals[LATE]), totals[LIKELY]


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


def _until(cut: int | None) -> int:
    return FOR_EVER if cut is None else cut
