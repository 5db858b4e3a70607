"""The boxes by which a planting is written down as sown, just as a sheet tells it."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from farm.models import Farm
from records.forms import PlantingForm
from records.models import Planting
from records.tables.rules import posted

Boxes = tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True)
class Loaded:
    """Seed of one kind loaded from one lot: its number, weight and share. [kg, 0–1]"""

    kind_id: int
    lot: int
    seed_kg: float
    share: float


def boxes_of(
    farm: Farm, loaded: Mapping[int, Sequence[Loaded]], *, today: dt.date
) -> dict[int, Boxes]:
    """What the entry form of each planting would send once it is sown.

    It is sown on the day it was planned for, or today where that is still to come.
    """
    rows = Planting.objects.on(farm).live().filter(pk__in=loaded).select_related("farm")
    return {
        row.pk: tuple(_boxes(row, loaded[row.pk], today).items())
        for row in rows.order_by("pk")
    }


def _boxes(row: Planting, lines: Sequence[Loaded], today: dt.date) -> Mapping[str, str]:
    shown = posted(PlantingForm(None, farm=row.farm, today=today, instance=row))
    sent = {
        name: str(value)
        for name, value in shown.items()
        if not name.startswith("lines-")
    }
    sent["sown_on"] = min(row.planned_on or today, today).isoformat()
    return sent | dict(_lines(lines))


def _lines(lines: Sequence[Loaded]) -> Iterator[tuple[str, str]]:
    yield "lines-TOTAL_FORMS", str(len(lines))
    yield "lines-INITIAL_FORMS", "0"
    for place, line in enumerate(lines):
        yield f"lines-{place}-kind", str(line.kind_id)
        yield f"lines-{place}-lot", str(line.lot)
        yield f"lines-{place}-seed_kg", f"{line.seed_kg!r} kg"
        yield f"lines-{place}-share", f"{line.share * 100!r}"
