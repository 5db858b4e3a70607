"""The story as a diary: every line in the order in which it was written down."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from farm.models import Record
from records.reading.demo import plain
from records.reading.demo.nouns import SHEETS
from records.reading.demo.plain import Told

# On one evening the land comes first and what leans on it after.
ACTS = ("mended", "voided", "reviewed")
ORDER = (*SHEETS, *ACTS)
BELOW_PLANTINGS = ("seen", "weighed", "ended")


@dataclass(eq=False)
class Line:
    """One record of the story, and its row once it is written."""

    noun: str
    told: Told
    within: Line | None = None
    row: Record | None = None

    @property
    def written(self) -> dt.date:
        """The evening it was written down; never before what it hangs on."""
        day = self.told.get("written") or self.told.get(SHEETS[self.noun].day)
        own = plain.day(day or self.told["planned"])
        return max(own, self.within.written) if self.within else own

    @property
    def by(self) -> str:
        name: str | None = self.told.get("by")
        return name or (self.within.by if self.within else "owner")


@dataclass(frozen=True)
class Entry:
    """A line written, mended or voided on one evening."""

    day: dt.date
    act: str
    line: Line

    @property
    def place(self) -> tuple[dt.date, int]:
        return self.day, ORDER.index(self.act)

    @property
    def by(self) -> str:
        told = self.line.told.get(self.act, {})
        name: str = told.get("by") or self.line.by
        return name


def entries(story: Told) -> list[Entry]:
    return sorted(_entries(story), key=lambda entry: entry.place)


def _entries(story: Told) -> Iterator[Entry]:
    for line in _lines(story):
        yield Entry(line.written, line.noun, line)
        for act in ACTS:
            if act in line.told:
                yield Entry(plain.day(line.told[act]["on"]), act, line)


def _lines(story: Told) -> Iterator[Line]:
    for noun in SHEETS:
        for told in story.get(noun, ()):
            line = Line(noun, told)
            yield line
            yield from _below(line)


def _below(line: Line) -> Iterator[Line]:
    for noun in BELOW_PLANTINGS:
        rows: list[Any] = line.told.get(noun, [])
        for told in rows:
            yield Line(noun, told, within=line)
