"""One field's season, and each planting in it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from reports.calc.season.choice import choice_of
from reports.calc.season.ground import carried, cover_days, parts_of
from reports.calc.season.held import HeldByPiece, held_by_piece
from reports.calc.season.pieces import FOR_EVER
from reports.calc.season.reach import recent
from reports.calc.season.reckoning import Reckoning
from reports.calc.season.remains import (
    Layers,
    Remains,
    layers_of,
    remains_of,
    residue_days,
)
from reports.calc.season.seed_use import seed_uses
from reports.calc.season.soil_loss import Indices
from reports.calc.season.stands import Stand, stand_of
from reports.calc.season.strips import strip_of
from reports.calc.season.weed_window import weed_days, weed_window
from reports.calc.shapes.basics import Span
from reports.calc.shapes.ledger import FieldLedger, PlantingFacts, Residue
from reports.calc.shapes.season import FieldSeason, PlantingSeason


@dataclass(slots=True)
class Tenant:
    """A stand and what its ended pieces left."""

    stand: Stand
    left: tuple[Remains, ...]
    held: HeldByPiece


def tenants_of(ledger: FieldLedger, reckoning: Reckoning) -> tuple[Tenant, ...]:
    """Return the stands of a field's recent plantings, with what they left."""
    plantings = recent(ledger.plantings, reckoning.season)
    stands = (stand_of(planting, reckoning) for planting in plantings)
    return tuple(
        Tenant(stand, left := remains_of(stand, reckoning), held_by_piece(stand, left))
        for stand in stands
    )


def field_season(
    ledger: FieldLedger,
    tenants: Sequence[Tenant],
    erosion: Indices,
    reckoning: Reckoning,
) -> FieldSeason:
    """Return what a field's season came to."""
    layers = layers_of((row for one in tenants for row in one.left), reckoning)
    parts = parts_of([(one.stand, one.left) for one in tenants], ledger.area_m2)
    rows = [carried(part, layers, reckoning) for part in parts]
    pieces = {key: held for one in tenants for key, held in one.held.items()}
    held, likely = weed_days(parts, pieces, reckoning)
    here = [one for one in tenants if _in_season(one.stand, reckoning)]
    plantings = tuple(
        _planting_season(one, ledger.name, layers, erosion, reckoning) for one in here
    )
    return FieldSeason(
        ledger=ledger,
        cover=cover_days(rows, reckoning),
        weed_days=held,
        weed_days_likely=likely,
        plantings=plantings,
        strip=strip_of(rows, [one.stand for one in tenants], reckoning),
        kinds=_kinds(plantings),
        residues=_residues(plantings, reckoning.season),
        seed_kg=sum(
            line.seed_kg or 0.0
            for row in plantings
            if sown_in(row.planting, reckoning.season)
            for line in row.planting.lines
        ),
    )


def sown_in(planting: PlantingFacts, season: Span) -> bool:
    """Return whether the seed of a planting went out in a season."""
    return planting.sown_on is not None and planting.sown_on in season


def _planting_season(
    one: Tenant,
    field_name: str,
    layers: Layers,
    erosion: Indices,
    reckoning: Reckoning,
) -> PlantingSeason:
    stand, planting = one.stand, one.stand.planting
    left = () if stand.cash else one.left
    choices = tuple(choice_of(row, erosion, reckoning) for row in left)
    cautions = (key for line in planting.lines for key in line.kind.cautions)
    return PlantingSeason(
        planting=planting,
        field_name=field_name,
        alive=_alive(stand, reckoning),
        stages=stand.reached,
        living_days=_living_days(stand, reckoning),
        residue_days=residue_days(one.left, layers, reckoning),
        weed_window=weed_window(stand, one.left, choices, one.held, reckoning),
        seed=seed_uses(planting, reckoning),
        choices=choices,
        cautions=tuple(dict.fromkeys(cautions)),
        doubts=stand.doubts,
    )


def _in_season(stand: Stand, reckoning: Reckoning) -> bool:
    start, season = stand.planting.start, reckoning.season
    if start is None:
        return True
    if stand.planting.sown_on is None:
        return start in season
    gone_on = None if stand.gone == FOR_EVER else reckoning.station.day(stand.gone)
    return start <= season.last and (gone_on is None or gone_on >= season.first)


def _alive(stand: Stand, reckoning: Reckoning) -> Span | None:
    today = reckoning.station.index(reckoning.today)
    if stand.up is None:
        return None
    stop = min(stand.gone, today + 1)
    if stop <= stand.up:
        return None
    return Span(reckoning.station.day(stand.up), reckoning.station.day(stop - 1))


def _living_days(stand: Stand, reckoning: Reckoning) -> float:
    if stand.up is None:
        return 0.0
    first = reckoning.offset
    last = first + reckoning.counted
    begin, days = max(stand.up, first), 0.0
    for piece in stand.pieces:
        stop = last if piece.dead is None else min(piece.dead, last)
        days += piece.share * max(stop - begin, 0)
    return days


def _kinds(plantings: Sequence[PlantingSeason]) -> tuple[str, ...]:
    names = (line.kind.name for row in plantings for line in row.planting.lines)
    return tuple(dict.fromkeys(names))


def _residues(plantings: Sequence[PlantingSeason], season: Span) -> tuple[Residue, ...]:
    taken = (
        end.residue
        for row in plantings
        for end in row.planting.ends
        if end.on in season and not end.regrows
    )
    return tuple(dict.fromkeys(taken))
