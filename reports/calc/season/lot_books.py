"""A running balance of every lot, and what a count found beside it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from reports.calc.shapes.basics import Span
from reports.calc.shapes.lot_books import (
    Balance,
    Entry,
    Event,
    InMix,
    KindBook,
    Line,
    LotBook,
    LotStory,
)

ADDS = frozenset({Entry.CAME, Entry.RECEIVED, Entry.BROUGHT_BACK})
ORDER = {entry: place for place, entry in enumerate(Entry)}
# Scales and rounding. [kg]
NOTHING_KG = 0.005
DUST_KG = 1e-7


def kind_books(stories: Sequence[LotStory], period: Span) -> tuple[KindBook, ...]:
    """Return each kind with the books of its lots that the period touches."""
    books = [book for book in (lot_book(one, period) for one in stories) if book]
    kinds = {book.story.kind_name for book in books}
    kinds |= {name for book in books for name, _ in book.story.mixed}
    return tuple(_kind(name, books) for name in sorted(kinds))


def lot_book(story: LotStory, period: Span) -> LotBook | None:
    """Return a lot's book for a period, or None where it holds and does nothing."""
    lines = tuple(running(story.events))
    before = [line for line in lines if line.event.on < period.first]
    inside = tuple(line for line in lines if line.event.on in period)
    opening = before[-1].left_kg if before else 0.0
    if not inside and abs(opening) <= NOTHING_KG:
        return None
    balance = Balance(
        opening_kg=opening,
        came_kg=_sum(inside, ADDS),
        sown_kg=-_sum(inside, {Entry.SOWN}),
        gone_kg=-_sum(inside, {Entry.RETURNED, Entry.PASSED_ON, Entry.DISCARDED}),
        variance_kg=_sum(inside, {Entry.COUNTED}),
        closing_kg=inside[-1].left_kg if inside else opening,
        counts=sum(line.event.entry is Entry.COUNTED for line in inside),
    )
    below = any(line.left_kg < -NOTHING_KG for line in inside)
    return LotBook(story, balance, inside, below)


def running(events: Iterable[Event]) -> Iterator[Line]:
    """Return every entry in turn with what was left after it.

    Examples
    --------
    >>> import datetime as dt
    >>> day = dt.date(2026, 5, 1)
    >>> told = [Event(day, Entry.COUNTED, 4.0), Event(day, Entry.CAME, 5.0)]
    >>> [(line.change_kg, line.left_kg) for line in running(told)]
    [(5.0, 5.0), (-1.0, 4.0)]
    """
    left = 0.0
    for event in sorted(events, key=lambda one: (one.on, ORDER[one.entry])):
        change = event.mass_kg if event.entry in ADDS else -event.mass_kg
        if event.entry is Entry.COUNTED:
            change = event.mass_kg - left
        left += change
        # Weights are kept as numbers of a binary kind: what is left of none is none.
        left = 0.0 if abs(left) < DUST_KG else left
        yield Line(event, change, left)


def _sum(lines: Iterable[Line], entries: Iterable[Entry]) -> float:
    kept = frozenset(entries)
    return sum(line.change_kg for line in lines if line.event.entry in kept)


def _kind(name: str, every: Sequence[LotBook]) -> KindBook:
    books = [book for book in every if book.story.kind_name == name]
    rows = [book.balance for book in books]
    total = Balance(
        opening_kg=sum(row.opening_kg for row in rows),
        came_kg=sum(row.came_kg for row in rows),
        sown_kg=sum(row.sown_kg for row in rows),
        gone_kg=sum(row.gone_kg for row in rows),
        variance_kg=sum(row.variance_kg for row in rows),
        closing_kg=sum(row.closing_kg for row in rows),
        counts=sum(row.counts for row in rows),
    )
    mixes = tuple(_in_mixes(name, every))
    alive = [_times(book.balance.closing_kg, book.story.pls) for book in books]
    live_kg = _all([*alive, *(mix.live_kg for mix in mixes)])
    is_mix = any(book.story.mixed for book in books)
    return KindBook(name, total, tuple(books), None if is_mix else live_kg, mixes)


def _in_mixes(name: str, books: Sequence[LotBook]) -> Iterator[InMix]:
    for book in books:
        left = book.balance.closing_kg
        for kind, pls in book.story.mixed:
            if kind == name:
                live = _times(left, pls)
                yield InMix(book.story.id, book.story.label, left, live)


def _times(left_kg: float, pls: float | None) -> float | None:
    if abs(left_kg) <= NOTHING_KG:
        return 0.0
    return None if pls is None else left_kg * pls


def _all(values: Sequence[float | None]) -> float | None:
    known = [value for value in values if value is not None]
    return sum(known) if len(known) == len(values) else None
