"""What a table may leave out, since the rest of the row tells it."""

from __future__ import annotations

import json
from typing import Any

from farm import outlines
from farm.models import Field, Record


def fill(row: Record) -> None:
    """Work out an area left empty, as the entry forms do."""
    if isinstance(row, Field):
        _fill_field(row)
    elif hasattr(row, "area_m2") and row.area_m2 is None:
        field = getattr(row, "field", None)
        row.area_m2 = field.area_m2 if field else None


def _fill_field(row: Any) -> None:
    if row.outline:
        reckoned, how = _outlined(row.outline), Field.Measured.OUTLINE
    elif row.length_m and row.width_m:
        reckoned, how = row.length_m * row.width_m, Field.Measured.SIDES
    else:
        reckoned, how = None, Field.Measured.ENTERED
    if row.area_m2 is None:
        row.area_m2 = reckoned
    if not row.measured:
        row.measured = how


def _outlined(outline: Any) -> float:
    try:
        found = outlines.read_outline(json.dumps(outline))
    except outlines.OutlineError:
        found = None
    if found is None or found.crossings:
        # No area can be told; the field's form will say what is wrong with it.
        return 1.0
    return outlines.area_m2(found)
