"""A season laid out for a page: sections, drawings, and the figures behind them."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from django.utils.safestring import SafeString
from django.utils.translation import gettext as _

from farm.units import System
from reports.calc.shapes.choice import CurvePoint, ResidueChoice
from reports.calc.shapes.ledger import Purpose
from reports.calc.shapes.season import (
    FieldSeason,
    PlantingSeason,
    SeasonPage,
    SeedUse,
    StageDate,
    StageName,
)
from reports.drawings import Stretch, StripRow, mass_curve, season_strip, stretches

# As many rows as stand on one sheet with their legend.
ROWS_A_DRAWING = 16
# The two ways are set side by side on the days drawn that lie nearest to these.
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
    def known(self) -> tuple[StageDate, ...]:
        """Stages with a day."""
        return tuple(stage for stage in self.row.stages if stage.on is not None)

    @property
    def unknown(self) -> tuple[StageName, ...]:
        """Stages without one."""
        return tuple(stage.name for stage in self.row.stages if stage.on is None)

    @property
    def seed(self) -> tuple[SeedUse, ...]:
        """Seed of which a lot or a weight was written down."""
        return tuple(use for use in self.row.seed if use.lot or use.seed_kg)

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

    @property
    def is_busy(self) -> bool:
        """Whether anything stood, lay or was put there; a still field is only named."""
        cover, told = self.row.cover, self.row.ledger
        return bool(
            self.plantings
            or told.applications
            or told.sheets
            or cover.living
            or cover.residue
        )


@dataclass(frozen=True, slots=True)
class CautionPart:
    """A caution and the kinds of this season that carry it."""

    key: str
    kinds: tuple[str, ...]


def caution_parts(page: SeasonPage) -> Iterator[CautionPart]:
    """Each caution once, with every kind that it goes for."""
    kinds: dict[str, dict[str, None]] = {}
    for field in page.fields:
        for stand in field.plantings:
            for line in stand.planting.lines:
                for key in line.kind.cautions:
                    kinds.setdefault(key, {})[line.kind.name] = None
    for key, names in sorted(kinds.items()):
        yield CautionPart(key, tuple(names))


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
    """A planting with both ways to leave each of its residues.

    What a harvest leaves behind is told on the strip; the choice is one for covers.
    """
    is_cash = stand.planting.purpose is Purpose.CASH
    choices = (
        choice_part(choice, f"curve-{stand.planting.id}-{place}", system)
        for place, choice in enumerate(() if is_cash else stand.choices)
    )
    return PlantingPart(stand, tuple(choices))


def choice_part(choice: ResidueChoice, ident: str, system: System) -> ChoicePart:
    """A choice with its drawing."""
    drawing = mass_curve(choice, ident=ident, system=system)
    return ChoicePart(choice, drawing, tuple(_pairs(choice)))


def _pairs(choice: ResidueChoice) -> Iterator[Pair]:
    if choice.on_top is None or choice.worked_in is None:
        return
    both = zip(choice.on_top.curve, choice.worked_in.curve, strict=True)
    pairs = [Pair(on_top, worked_in) for on_top, worked_in in both]
    nearest = (
        min(pairs, key=lambda pair: abs(pair.on_top.offset_days - day))
        for day in COMPARED_DAYS
        if pairs
    )
    yield from dict.fromkeys(nearest)


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
