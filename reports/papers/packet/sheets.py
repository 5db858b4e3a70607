"""Which parts are printed together, so that most stay as they were last time.

A long part is cut where its own words say so: a row put in moves no other cut, and
the pieces before and after it need not be printed again.
"""

from __future__ import annotations

import zlib
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace
from typing import TypeVar

from reports.papers.packet.tables import Group, Register, Section, weight_of

# Rows that a piece has about, at least and at most: what one changed row prints anew.
ABOUT, LEAST, MOST = 120, 60, 240
TOGETHER = 120

T = TypeVar("T")


@dataclass(frozen=True)
class Sheet:
    """Parts that are printed as one piece."""

    sections: tuple[Section, ...]

    @property
    def weight(self) -> int:
        return sum(one.weight for one in self.sections)


def sheets(sections: Sequence[Section]) -> Iterator[Sheet]:
    """Short parts together, long parts cut, all in their order."""
    waiting: list[Section] = []
    for section in _turned(sections):
        parts = list(_cut(section))
        full = sum(one.weight for one in waiting) + parts[0].weight > TOGETHER
        if waiting and (full or len(parts) > 1):
            yield Sheet(tuple(waiting))
            waiting = []
        *whole, last = parts
        for one in whole:
            yield Sheet((one,))
        waiting.append(last)
        if len(parts) > 1:
            yield Sheet(tuple(waiting))
            waiting = []
    if waiting:
        yield Sheet(tuple(waiting))


def _turned(sections: Sequence[Section]) -> Iterator[Section]:
    """Tables with many columns on their side, and a part that stands between such.

    Short parts lie as the part before.
    """
    long = [one for one in sections if not one.is_short]
    wide = [one.register is not None and one.register.is_wide for one in long]
    beside = zip([False, *wide], wide, [*wide[1:], False], strict=False)
    lying = [one or (before and after) for before, one, after in beside]
    turned = dict(zip((one.key for one in long), lying, strict=True))
    lies = False
    for section in sections:
        lies = turned.get(section.key, lies)
        yield replace(section, is_sideways=lies)


def _cut(section: Section) -> Iterator[Section]:
    if section.groups and section.weight > MOST:
        told: list[Section] = [
            replace(section, groups=tuple(some), weight=weight_of(some))
            for some in runs(section.groups, _group_weight, lambda one: one.title)
        ]
    elif section.register is not None and len(section.register.rows) > MOST:
        told = [
            replace(
                section,
                register=Register(section.register.headings, tuple(some)),
                weight=len(some),
            )
            for some in runs(section.register.rows, lambda row: 1, " ".join)
        ]
    else:
        told = [section]
    yield told[0]
    for one in told[1:]:
        yield replace(one, continued=True)


def runs(
    things: Sequence[T], weigh: Callable[[T], int], spell: Callable[[T], str]
) -> Iterator[list[T]]:
    """Cut before a thing whose own checksum asks for it, or where it grows too long."""
    run: list[T] = []
    heavy = 0
    for thing in things:
        weight = weigh(thing)
        asks = zlib.crc32(spell(thing).encode()) % ABOUT < weight
        if run and (heavy + weight > MOST or (heavy >= LEAST and asks)):
            yield run
            run, heavy = [], 0
        run.append(thing)
        heavy += weight
    yield run


def _group_weight(group: Group) -> int:
    return weight_of((group,))
