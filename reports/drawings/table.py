"""What a strip shows, as rows: the figures behind the picture."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator
from dataclasses import dataclass

from reports.calc.shapes.basics import Span
from reports.calc.shapes.season import Ground, Strip


@dataclass(frozen=True, slots=True)
class Stretch:
    """Days with the same ground on the same share, and where it stands in the row.

    ``share`` is of the field; ``top`` and ``height`` are of the row's height.
    """

    first: dt.date
    last: dt.date
    ground: Ground
    share: float
    top: float
    height: float

    @property
    def days(self) -> int:
        return (self.last - self.first).days + 1


def stretches(strip: Strip, season: Span) -> tuple[Stretch, ...]:
    """Every stretch of a field's season, in order of its first day."""
    done: list[Stretch] = []
    growing: list[Stretch] = []
    for part in _parts(strip, season):
        now = list(_stacked(strip, part))
        kept = [_longer(row, now) for row in growing]
        done += [row for row, next_ in zip(growing, kept, strict=True) if not next_]
        growing = [_joined(row, growing) for row in now]
    return tuple(sorted([*done, *growing], key=lambda row: (row.first, row.top)))


def _parts(strip: Strip, season: Span) -> Iterator[Span]:
    """The season cut at every day on which anything changes."""
    day = dt.timedelta(days=1)
    cuts = {season.first, season.last + day}
    for row in strip.segments:
        cuts |= {row.first, row.last + day}
    inside = sorted(cut for cut in cuts if season.first <= cut <= season.last + day)
    for first, after in zip(inside, inside[1:], strict=False):
        yield Span(first, after - day)


def _stacked(strip: Strip, part: Span) -> Iterator[Stretch]:
    """What stands one above the other on the days of one part."""
    here = [row for row in strip.segments if row.first <= part.first <= row.last]
    whole = max(1.0, sum(row.share for row in here))
    top = 0.0
    for ground in Ground:
        share = sum(row.share for row in here if row.ground is ground)
        if share:
            yield Stretch(part.first, part.last, ground, share, top, share / whole)
            top += share / whole


def _same(one: Stretch, other: Stretch) -> bool:
    return (
        one.ground is other.ground
        and abs(one.top - other.top) < 1e-6
        and abs(one.height - other.height) < 1e-6
    )


def _longer(row: Stretch, now: list[Stretch]) -> bool:
    return any(_same(row, other) for other in now)


def _joined(row: Stretch, before: list[Stretch]) -> Stretch:
    """The row with the days of the stretch it carries on."""
    for old in before:
        if _same(old, row):
            return Stretch(
                old.first, row.last, row.ground, row.share, row.top, row.height
            )
    return row
