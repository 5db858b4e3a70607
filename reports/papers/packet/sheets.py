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

# Cells that a piece has about, at least and at most: what one changed row prints anew.
ABOUT, LEAST, MOST = 600, 300, 1200
TOGETHER = 1200
# What a row takes at least, and where it is no row of a register. [cells]
ROW = 6

T = TypeVar("T")


@dataclass(frozen=True)
class Sheet:
    """Parts that are printed as one piece."""

    sections: tuple[Section, ...]


def sheets(sections: Sequence[Section]) -> Iterator[Sheet]:
    """Short parts together, long parts cut, all in their order."""
    waiting: list[Section] = []
    for section in _turned(sections):
        parts = list(_cut(section))
        full = sum(map(_cells, waiting)) + _cells(parts[0]) > TOGETHER
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
    told = list(_parts(section)) if _cells(section) > MOST else [section]
    yield told[0]
    for one in told[1:]:
        yield replace(one, continued=True)


def _parts(section: Section) -> Iterator[Section]:
    """A long part by its fields, its rows or its items; whole where it has none."""
    register = section.register
    if section.groups:
        for groups in runs(section.groups, _cells_of_group, lambda one: one.title):
            yield replace(section, groups=tuple(groups), weight=weight_of(groups))
    elif register is not None:
        across = _across(register)
        for rows in runs(register.rows, lambda _row: across, " ".join):
            told = Register(register.headings, tuple(rows))
            yield replace(section, register=told, weight=len(rows))
    elif section.items:
        for items in runs(section.items, lambda one: one.cells, lambda one: one.name):
            yield replace(section, items=tuple(items), weight=len(items))
    else:
        yield section


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


def _cells(section: Section) -> int:
    """How much there is to print, in cells of a table."""
    if section.groups:
        return sum(map(_cells_of_group, section.groups))
    if section.items:
        return sum(one.cells for one in section.items)
    if section.register is None:
        return section.weight * ROW
    rows = len(section.register.rows)
    beside = max(0, section.weight - rows)
    return rows * _across(section.register) + beside * ROW


def _cells_of_group(group: Group) -> int:
    rows = len(group.register.rows)
    beside = weight_of((group,)) - rows
    return rows * _across(group.register) + beside * ROW


def _across(register: Register) -> int:
    return max(ROW, len(register.headings))
