"""Fields, what is said of them, and their edges."""

from __future__ import annotations

from typing import Any

from farm import outlines
from farm.models import Edge, Field, LandStatement
from reports.calc.shapes.books import Ground, Side, Statement
from reports.ledger.dossier.reading import Reading


def told(reading: Reading) -> dict[str, Any]:
    """Three queries: fields, statements, edges."""
    fields = list(reading.live(Field))
    drawn = {row.pk: outlines.as_kept(row.outline) for row in fields if row.outline}
    return {
        "fields": tuple(map(_ground, fields)),
        "statements": tuple(_statement(row) for row in reading.live(LandStatement)),
        "sides": tuple(_side(row) for row in reading.live(Edge)),
        "drawn_over": outlines.sharing({pk: one for pk, one in drawn.items() if one}),
    }


def _ground(row: Field) -> Ground:
    return Ground(
        id=row.pk,
        name=row.name,
        area_m2=row.area_m2,
        status=row.status,
        status_since=row.status_since,
        parent_id=row.parent_id,
        has_outline=bool(row.outline),
    )


def _statement(row: LandStatement) -> Statement:
    return Statement(
        id=row.pk,
        field_id=row.field_id,
        first=row.first,
        last=row.last,
        substance=row.substance,
        last_used_on=row.last_used_on,
        signer=row.signer,
    )


def _side(row: Edge) -> Side:
    return Side(
        id=row.pk,
        field_id=row.field_id,
        side=row.side,
        neighbour=row.neighbour,
        buffer_m=row.buffer_m,
        barrier=row.barrier,
    )
