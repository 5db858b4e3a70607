"""The days an ending tells: worked in, taken away, killed by frost."""

from __future__ import annotations

import datetime as dt

from reports.calc.shapes.ledger import End, PlantingFacts, Residue, Seen


def buried_on(end: End) -> dt.date | None:
    """Return the day the residue was worked in, None where it never was."""
    if end.residue is Residue.WORKED_IN:
        return end.worked_in_on or end.on
    return end.worked_in_on


def taken_on(end: End) -> dt.date | None:
    """Return the day the residue was carried off or grazed, None where it stayed."""
    return end.on if end.residue in (Residue.REMOVED, Residue.GRAZED) else None


def killed_on(planting: PlantingFacts) -> dt.date | None:
    """Return the day frost was seen to have killed a stand that did not come back."""
    start = planting.start or dt.date.min
    seen = [row for row in planting.observations if row.on >= start]
    killed = [row.on for row in seen if row.seen is Seen.FROST_KILLED]
    if not killed:
        return None
    on = min(killed)
    grown = any(row.seen is Seen.REGROWN and row.on > on for row in seen)
    return None if grown else on
