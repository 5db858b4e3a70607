"""A register as rows of words, and how values are written in it."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import Any

from django.utils.functional import Promise
from django.utils.safestring import SafeString
from django.utils.translation import gettext as _

from farm import units
from farm.unit_words import measure_said
from farm.units import System
from reports.calc.shapes.dossier import Dossier

Word = str | Promise
# More columns than this are printed on a sheet turned sideways.
MOST_UPRIGHT = 9


@dataclass(frozen=True)
class Register:
    """One table: what heads its columns, and its rows."""

    headings: tuple[Word, ...]
    rows: tuple[tuple[str, ...], ...]

    @property
    def is_wide(self) -> bool:
        return len(self.headings) > MOST_UPRIGHT


@dataclass(frozen=True)
class Group:
    """The rows of one field, under its name, with a drawing and a sentence."""

    title: str
    register: Register
    drawing: SafeString = SafeString("")
    note: str = ""


@dataclass(frozen=True)
class Item:
    """A row that a part's own template spells out; its name tells it from others.

    It takes as much to print as so many cells of a table.
    """

    name: str
    row: Any
    cells: int


@dataclass(frozen=True)
class Section:
    """One part of the packet: its word in addresses, its title, what it prints."""

    key: str
    title: str
    register: Register | None = None
    groups: tuple[Group, ...] = ()
    items: tuple[Item, ...] = ()
    weight: int = 0
    continued: bool = False
    # A part that only says that none is recorded lies as the part before it does.
    is_sideways: bool = False
    # The titles of parts in which nothing is recorded, told in one list.
    titles: tuple[str, ...] = ()

    @property
    def is_empty(self) -> bool:
        """Whether the part would only say that nothing is recorded."""
        if self.register is not None:
            return not self.register.rows
        if self.groups:
            return not any(one.register.rows for one in self.groups)
        return self.weight == 0

    @property
    def rows(self) -> list[Any]:
        """What the part's own template spells out."""
        return [one.row for one in self.items]

    @property
    def is_short(self) -> bool:
        return self.weight <= 1


@dataclass(frozen=True)
class Books:
    """The farm's books with the units they are written in."""

    told: Dossier
    system: System

    def field(self, field_id: int | None) -> str:
        ground = self.told.field.get(field_id or 0)
        return ground.name if ground else "—"

    def area(self, area_m2: float) -> str:
        return measure_said(units.write_area(area_m2, self.system))

    def length(self, length_m: float) -> str:
        return measure_said(units.write_length(length_m, self.system))

    def heat(self, least_c: float, most_c: float) -> str:
        least, most = (units.write_temp(one, self.system) for one in (least_c, most_c))
        return f"{least} – {most}"

    def mass(self, mass_kg: float | None) -> str:
        return "—" if mass_kg is None else str(units.write_mass(mass_kg, self.system))

    def rate(self, mass_kg: float, area_m2: float) -> str:
        return measure_said(units.write_rate(mass_kg / area_m2, self.system))

    def spread(self, amount: float, measure: str, area_m2: float) -> str:
        """How thick it was put on: by weight, or by volume on an acre or hectare."""
        if not area_m2:
            return ""
        if measure != "volume":
            return self.rate(amount, area_m2)
        us = self.system is System.US
        land_m2, land = (units.M2_PER_ACRE, "ac") if us else (units.M2_PER_HA, "ha")
        whole = units.write_volume(amount / area_m2 * land_m2, self.system)
        return f"{whole}/{land}"

    def amount(self, amount: float, measure: str) -> str:
        if measure == "volume":
            return str(units.write_volume(amount, self.system))
        return self.mass(amount)

    def harvest_after(self, field_id: int, on: dt.date) -> dt.date | None:
        """The first day on which this ground was harvested after a day."""
        days = [crop.on for crop in self.told.on_ground("crops", field_id)]
        return min((day for day in days if day >= on), default=None)


def register(headings: tuple[Word, ...], rows: Iterable[Iterable[str]]) -> Register:
    """A table of rows; nothing in a cell is a dash."""
    told = tuple(tuple(cell or "—" for cell in row) for row in rows)
    return Register(headings, told)


def weight_of(groups: Sequence[Group]) -> int:
    """How many rows, and what a heading with a drawing takes."""
    return sum(len(one.register.rows) + (6 if one.drawing else 3) for one in groups)


def day(on: dt.date | None) -> str:
    """A day as ISO 8601 writes it: short, and read the same everywhere."""
    return on.isoformat() if on else ""


def days_from(first: dt.date | None, last: dt.date | None) -> str:
    return str((last - first).days) if first and last else ""


def yes(mark: bool | None) -> str:
    if mark is None:
        return _("not known")
    return _("yes") if mark else _("no")


def share(part: float | None) -> str:
    return "" if part is None else f"{part:.1%}"


def number(value: float | None) -> str:
    return "" if value is None else f"{value:g}"
