"""Seed lots, searches for organic seed, and whom seed came from."""

from __future__ import annotations

from typing import Any

from records.models import Kind, LotComponent, LotMove, SeedLot, SeedSearch, Supplier
from reports.calc.shapes.books import Lot, Moved, Part, Partner, Search
from reports.ledger.dossier.reading import Reading

# Tubers, cloves and slips carry no seed tag: they are planting stock.
PLANTING_STOCK = frozenset({"garlic", "potato", "sweet-potato", "strawberry"})


def told(reading: Reading) -> dict[str, Any]:
    """Seven queries: lots, kinds, weeds, moves, searches, whom they asked, partners."""
    lots, engineered = [], reading.flags["engineered_sold"]
    rows = reading.live(SeedLot).select_related("kind")
    for row in rows.prefetch_related("components__kind", "weeds"):
        lots.append(_lot(row, engineered))
        if row.received_on >= reading.since:
            reading.note(row, f"{row.kind} {row.lot_number}")
    searches = reading.live(SeedSearch).select_related("kind")
    return {
        "lots": tuple(lots),
        "moves": tuple(map(_move, reading.live(LotMove))),
        "searches": tuple(map(_search, searches.prefetch_related("asked"))),
        "partners": tuple(map(_partner, reading.live(Supplier))),
    }


def _lot(row: SeedLot, engineered: frozenset[int]) -> Lot:
    return Lot(
        id=row.pk,
        kind=str(row.kind),
        number=row.lot_number,
        supplier=row.supplier,
        received_on=row.received_on,
        received_kg=row.received_kg,
        status=row.status,
        treatment=row.treatment,
        certificate=row.certificate,
        tested_on=row.tested_on,
        purity=row.purity_share,
        germination=row.germination_share,
        bought=row.came == SeedLot.Came.RECEIVED,
        inoculant=row.inoculant,
        inoculant_until=row.inoculant_until,
        variety=row.variety,
        is_stock=row.kind.slug in PLANTING_STOCK,
        parts=tuple(map(_part, row.components.all())),
        saved=row.came == SeedLot.Came.SAVED,
        engineered=tuple(str(kind) for kind in _kinds(row) if kind.pk in engineered),
        non_gmo=row.non_gmo,
        non_gmo_on=row.non_gmo_on,
        noxious_told=_noxious_told(row),
    )


def _noxious_told(row: SeedLot) -> bool | None:
    """Whether the tag of field seed names its noxious weeds, or says there are none."""
    if row.kind.use == Kind.Use.CASH:
        return None
    return row.no_noxious or bool(row.weeds.all())


def _kinds(row: SeedLot) -> list[Kind]:
    """Every kind of a mix once, or the one kind."""
    kinds = {part.kind_id: part.kind for part in row.components.all()}
    return list(kinds.values()) or [row.kind]


def _part(row: LotComponent) -> Part:
    return Part(str(row.kind), row.germination_share)


def _move(row: LotMove) -> Moved:
    return Moved(row.pk, row.lot_id, row.moved_on, row.what, row.signed_kg)


def _search(row: SeedSearch) -> Search:
    asked = list(row.asked.all())
    return Search(
        id=row.pk,
        lot_id=row.lot_id,
        kind=str(row.kind),
        on=row.searched_on,
        traits=row.traits,
        reason=row.reason,
        asked=tuple((one.source, one.asked_on) for one in asked),
        answers=tuple(one.answer for one in asked),
    )


def _partner(row: Supplier) -> Partner:
    return Partner(
        id=row.pk,
        name=row.name,
        address=row.address,
        certificate=row.certificate,
        certificate_until=row.certificate_until,
        verified_on=row.verified_on,
        verified_how=row.verified_how,
        is_contractor=row.part == Supplier.Part.CONTRACTOR,
    )
