"""A season laid out for a page: sections, drawings, and the figures behind them."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from django.utils.safestring import SafeString
from django.utils.translation import gettext as _

from farm.units import System
from reports.calc.shapes.choice import CurvePoint, ResidueChoice
from reports.calc.shapes.season import FieldSeason, PlantingSeason, SeasonPage
from reports.drawings import Stretch, StripRow, mass_curve, season_strip, stretches

# As many rows as stand on one sheet with their legend.
ROWS_A_DRAWING = 16
# Days after the end at which the two ways are set side by side.
COMPARED_DAYS = (0, 30, 60, 90)


@dataclass(frozen=True, slots=True)
class Pair:
    """Both ways, on the same day after the end."""

    on_top: CurvePoint
    worked_in: CurvePoint


@dataclass(frozen=True, slots=True)
class ChoicePart:
    """A residue choice, its drawing, and a few days of both ways."""

    choice: ResidueChoice
    drawing: SafeString
    pairs: tuple[Pair, ...]


@dataclass(frozen=True, slots=True)
class PlantingPart:
    """A planting and its residue choices."""

    row: PlantingSeason
    choices: tuple[ChoicePart, ...]

    @property
    def kinds(self) -> str:
        """Every kind sown, by name."""
        return ", ".join(
            dict.fromkeys(line.kind.name for line in self.row.planting.lines)
        )


@dataclass(frozen=True, slots=True)
class FieldPart:
    """A field's section."""

    anchor: str
    row: FieldSeason
    drawing: SafeString
    stretches: tuple[Stretch, ...]
    plantings: tuple[PlantingPart, ...]


def field_parts(page: SeasonPage, system: System) -> Iterator[FieldPart]:
    """A section for each field."""
    for row in page.fields:
        anchor = f"field-{row.ledger.id}"
        yield FieldPart(
            anchor=anchor,
            row=row,
            drawing=season_strip(
                [StripRow(row.ledger.name, row.strip)],
                page.season,
                ident=f"strip-{row.ledger.id}",
                title=_("Season of %(field)s") % {"field": row.ledger.name},
            ),
            stretches=stretches(row.strip, page.season),
            plantings=tuple(planting_part(stand, system) for stand in row.plantings),
        )


def planting_part(stand: PlantingSeason, system: System) -> PlantingPart:
    """A planting with both ways to leave each of its residues."""
    choices = (
        choice_part(choice, f"curve-{stand.planting.id}-{place}", system)
        for place, choice in enumerate(stand.choices)
    )
    return PlantingPart(stand, tuple(choices))


def choice_part(choice: ResidueChoice, ident: str, system: System) -> ChoicePart:
    """A choice with its drawing."""
    drawing = mass_curve(choice, ident=ident, system=system)
    return ChoicePart(choice, drawing, tuple(_pairs(choice)))


def _pairs(choice: ResidueChoice) -> Iterator[Pair]:
    if choice.on_top is None or choice.worked_in is None:
        return
    other = {point.offset_days: point for point in choice.worked_in.curve}
    for point in choice.on_top.curve:
        if point.offset_days in COMPARED_DAYS and point.offset_days in other:
            yield Pair(point, other[point.offset_days])


def farm_strips(page: SeasonPage) -> Iterator[SafeString]:
    """All fields, a sheet at a time."""
    for place, rows in enumerate(_sheets(page.fields)):
        yield season_strip(
            [StripRow(row.ledger.name, row.strip) for row in rows],
            page.season,
            ident=f"farm-{place}",
            title=_("Season of every field, sheet %(number)d") % {"number": place + 1},
        )


def _sheets(rows: Sequence[FieldSeason]) -> Iterator[Sequence[FieldSeason]]:
    for first in range(0, len(rows), ROWS_A_DRAWING):
        yield rows[first : first + ROWS_A_DRAWING]
