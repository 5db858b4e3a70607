"""The records as they stood on a day: what happened later is not known yet."""

from __future__ import annotations

import datetime as dt
from collections.abc import Sequence
from dataclasses import replace

from reports.calc.shapes.ledger import FieldLedger, PlantingFacts


def as_of(fields: Sequence[FieldLedger], day: dt.date) -> tuple[FieldLedger, ...]:
    """Return the fields without anything that happened after a day; plans stay."""
    return tuple(
        replace(
            field,
            plantings=tuple(
                _known(row, day)
                for row in field.plantings
                if row.sown_on is None or row.sown_on <= day
            ),
        )
        for field in fields
    )


def _known(row: PlantingFacts, day: dt.date) -> PlantingFacts:
    seen = tuple(one for one in row.observations if one.on <= day)
    ends = tuple(one for one in row.ends if one.on <= day)
    samples = tuple(one for one in row.samples if one.on <= day)
    if (seen, ends, samples) == (row.observations, row.ends, row.samples):
        return row
    return replace(row, observations=seen, ends=ends, samples=samples)
