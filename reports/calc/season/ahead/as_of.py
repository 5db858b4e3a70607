"""The records as they stood on a day: what happened later is not known yet."""

from __future__ import annotations

import datetime as dt
from collections.abc import Sequence
from dataclasses import replace

from reports.calc.shapes.ledger import End, FieldLedger, PlantingFacts, Residue


def as_of(fields: Sequence[FieldLedger], day: dt.date) -> tuple[FieldLedger, ...]:
    """Return the fields without anything that happened after a day; plans stay.

    What was sown later counts as planned where a plan had been written down.
    """
    return tuple(
        replace(
            field,
            plantings=tuple(
                _known(row, day)
                for row in field.plantings
                if row.sown_on is None
                or row.sown_on <= day
                or row.planned_on is not None
            ),
            applications=tuple(row for row in field.applications if row.on <= day),
        )
        for field in fields
    )


def _known(row: PlantingFacts, day: dt.date) -> PlantingFacts:
    seen = tuple(one for one in row.observations if one.on <= day)
    ends = tuple(_left(one, day) for one in row.ends if one.on <= day)
    samples = tuple(one for one in row.samples if one.on <= day)
    sown = row.sown_on if row.sown_on and row.sown_on <= day else None
    known = (seen, ends, samples, sown)
    if known == (row.observations, row.ends, row.samples, row.sown_on):
        return row
    return replace(row, observations=seen, ends=ends, samples=samples, sown_on=sown)


def _left(end: End, day: dt.date) -> End:
    """Return an end as it lay on the day: what was worked in later lay on top."""
    if end.worked_in_on is None or end.worked_in_on <= day:
        return end
    return replace(end, residue=Residue.ON_TOP, worked_in_on=None)
