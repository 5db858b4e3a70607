"""Where the seed of each lot went."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from reports.calc.season.fields import sown_in
from reports.calc.shapes.basics import Span
from reports.calc.shapes.ledger import LotFacts
from reports.calc.shapes.season import FieldSeason, FieldSeed, LotUse, SeedUse


def lots_of(fields: Sequence[FieldSeason], season: Span) -> tuple[LotUse, ...]:
    """Return where the seed of each lot went, seed sown in the season only."""
    lots: dict[int, LotFacts] = {}
    planted: dict[int, dict[int, FieldSeed]] = {}
    for field, use in sown_of(fields, season):
        if use.lot is None or use.seed_kg is None:
            continue
        lots[use.lot.id] = use.lot
        by_field = planted.setdefault(use.lot.id, {})
        before = by_field.get(field.ledger.id)
        seed_kg = use.seed_kg + (before.seed_kg if before else 0.0)
        row = FieldSeed(field.ledger.id, field.ledger.name, seed_kg)
        by_field[field.ledger.id] = row
    return tuple(
        LotUse(
            lots[key],
            tuple(by_field.values()),
            sum(row.seed_kg for row in by_field.values()),
        )
        for key, by_field in planted.items()
    )


def sown_of(
    fields: Sequence[FieldSeason], season: Span
) -> Iterator[tuple[FieldSeason, SeedUse]]:
    """Return each use of seed sown in the season, with its field."""
    for field in fields:
        for row in field.plantings:
            if sown_in(row.planting, season):
                for use in row.seed:
                    yield field, use
