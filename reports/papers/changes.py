"""Changes since last season, each with when the certifier was told of it."""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass
from enum import StrEnum
from typing import Any

from django.utils.translation import gettext as _

from farm.models import Farm
from farm.units import System
from reports.calc.changes import changes_between
from reports.calc.shapes.basics import Span
from reports.calc.shapes.changes import Changed, Part, Use
from reports.calc.shapes.dossier import Dossier
from reports.calc.shapes.ledger import Ending, Method
from reports.labels import label
from reports.labels.changes import use_said
from reports.labels.records import material_said
from reports.ledger.dossier import dossier
from reports.ledger.kept_findings import Told, changes_told

LONGEST_KEY = 200
# Parts whose names are of a list of ours, and have words.
WORDED: Mapping[Part, Callable[[str], StrEnum]] = {
    Part.SOWINGS: Method,
    Part.ENDINGS: Ending,
}


@dataclass(frozen=True)
class ChangeLine:
    """One name that came or went, what is written down of it, and the record."""

    key: str
    name: str
    words: str
    came: bool
    use: Use
    said: str
    opens: bool = True
    told: Told | None = None


@dataclass(frozen=True)
class ChangedPart:
    """One part of the farm: what came and what went."""

    part: Part
    came: tuple[ChangeLine, ...]
    went: tuple[ChangeLine, ...]

    @property
    def lines(self) -> tuple[ChangeLine, ...]:
        return (*self.came, *self.went)


def changes_paper(farm: Farm, year: int, *, today: dt.date) -> dict[str, Any]:
    """What is new this season and what is no more, part by part."""
    season, before = Span(*farm.season(year)), Span(*farm.season(year - 1))
    books = dossier(farm, season, today=today)
    parts = changes_part(farm, books, before, season, year)
    untold = sum(line.told is None for part in parts for line in part.lines)
    page = {"farm": farm, "year": year, "season": season, "before": before}
    return {**page, "changes": parts, "untold": untold}


def changes_part(
    farm: Farm, books: Dossier, before: Span, season: Span, year: int
) -> tuple[ChangedPart, ...]:
    """The parts in which anything came or went."""
    told = changes_told(farm)

    def lines(one: Changed, way: str, names: Iterable[str]) -> Iterator[ChangeLine]:
        sentence = _("New: %(name)s") if way == "came" else _("Not used: %(name)s")
        for name in names:
            key = f"{year}.{one.part}.{way}.{name}"[:LONGEST_KEY]
            said, use = _said(one.part, name), one.uses[name]
            words = f"{label(one.part)}. {sentence % {'name': said}}"
            held = use_said(one.part, use, System(farm.units))
            opens = _opens(farm, use)
            came, heard = way == "came", told.get(key)
            yield ChangeLine(key, said, words, came, use, held, opens, heard)

    return tuple(
        ChangedPart(
            one.part,
            tuple(lines(one, "came", one.came)),
            tuple(lines(one, "went", one.went)),
        )
        for one in changes_between(books, before, season)
    )


def _opens(farm: Farm, use: Use) -> bool:
    """Whether who reads may open the record; an inspector sees that of a period."""
    if farm.period is None or use.noun == "fields":
        return True
    return farm.period[0] <= use.first <= farm.period[1]


def _said(part: Part, name: str) -> str:
    """A name as it is read: codes in words, what the farm wrote as it stands."""
    if part is Part.SHEETS:
        return material_said(name)
    return label(WORDED[part](name)) if part in WORDED else name
