"""A register as rows of words, and how values are written in it."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterable
from dataclasses import dataclass

from django.utils.formats import date_format
from django.utils.functional import Promise
from django.utils.translation import gettext as _

from farm import units
from farm.units import System
from reports.calc.shapes.dossier import Dossier

Word = str | Promise


@dataclass(frozen=True)
class Register:
    """One table: what heads its columns, and its rows."""

    headings: tuple[Word, ...]
    rows: tuple[tuple[str, ...], ...]

    @property
    def lines(self) -> list[list[tuple[Word, str]]]:
        """Each row as cells with what heads them."""
        return [list(zip(self.headings, row, strict=True)) for row in self.rows]


@dataclass(frozen=True)
class Books:
    """The farm's books with the units they are written in."""

    told: Dossier
    system: System

    def field(self, field_id: int | None) -> str:
        ground = self.told.field.get(field_id or 0)
        return ground.name if ground else "—"

    def area(self, area_m2: float) -> str:
        return str(units.write_area(area_m2, self.system))

    def mass(self, mass_kg: float | None) -> str:
        return "—" if mass_kg is None else str(units.write_mass(mass_kg, self.system))

    def amount(self, amount: float, measure: str) -> str:
        if measure == "volume":
            return str(units.write_volume(amount, self.system))
        return self.mass(amount)


def register(headings: tuple[Word, ...], rows: Iterable[Iterable[str]]) -> Register:
    """A table of rows; nothing in a cell is a dash."""
    told = tuple(tuple(cell or "—" for cell in row) for row in rows)
    return Register(headings, told)


def day(on: dt.date | None) -> str:
    return date_format(on, "j M Y") if on else ""


def yes(mark: bool | None) -> str:
    if mark is None:
        return _("not known")
    return _("yes") if mark else _("no")


def share(part: float | None) -> str:
    return "" if part is None else f"{part:.1%}"
