"""Every piece of a farm's land with its outline, in one query."""

from __future__ import annotations

from dataclasses import dataclass

from farm.models import Farm, Field
from farm.names import counting
from farm.outlines import Ring, as_kept


@dataclass(frozen=True)
class Plot:
    """A field as a map knows it; no polygons where it has no outline yet."""

    id: int
    name: str
    kind: str
    area_m2: float
    status: str
    part_of: str
    polygons: tuple[tuple[Ring, ...], ...]


def plots_of(farm: Farm) -> tuple[Plot, ...]:
    """The land of a farm by name."""
    rows = Field.objects.on(farm).live().select_related("parent")
    named = sorted(rows.order_by("pk"), key=lambda row: counting(row.name))
    return tuple(_plot(row) for row in named)


def _plot(row: Field) -> Plot:
    outline = as_kept(row.outline)
    return Plot(
        id=row.pk,
        name=row.name,
        kind=row.get_kind_display(),
        area_m2=row.area_m2,
        status=row.status,
        part_of=row.parent.name if row.parent else "",
        polygons=outline.polygons if outline else (),
    )
