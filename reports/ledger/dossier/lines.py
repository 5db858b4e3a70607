"""What was sown in each planting, read apart: a farm has thousands of lines."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable
from typing import Any

from records.models import Kind, SeedLine
from reports.calc.shapes.books import Line
from reports.ledger.dossier.reading import Reading

LEGUME = "legume"


def lines_of(reading: Reading, plantings: Iterable[Any]) -> dict[int, list[Line]]:
    """Two queries, for lines and for their kinds; lines by their planting."""
    rows = SeedLine.objects.filter(planting__in=[one.pk for one in plantings])
    told = list(rows.order_by("pk").values_list("planting", "kind", "lot", "seed_kg"))
    kinds = Kind.objects.in_bulk({kind for _planting, kind, *_more in told})
    plain = {one.pk: _of_kind(one, reading) for one in kinds.values()}
    lines: defaultdict[int, list[Line]] = defaultdict(list)
    for planting, kind, lot, seed_kg in told:
        lines[planting].append(Line(**plain[kind], lot_id=lot, seed_kg=seed_kg))
    return lines


def _of_kind(kind: Kind, reading: Reading) -> dict[str, Any]:
    return {
        "kind": str(kind),
        "legume": kind.group == LEGUME,
        "family": kind.family,
        "perennial": kind.pk in reading.flags["perennial"],
    }
