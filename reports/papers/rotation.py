"""What grew on a field, planting by planting, in the order of its rotation."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass

from farm.models import Farm
from reports.calc.shapes.ledger import PlantingFacts, Purpose, Residue

# Areas ended in parts are typed with rounding; this much is the whole.
WHOLE = 0.995


@dataclass(frozen=True, slots=True)
class RotationRow:
    """One planting in the order of the rotation."""

    year: int
    planting: int
    kinds: tuple[str, ...]
    families: tuple[str, ...]
    purpose: Purpose
    start: dt.date | None
    is_plan: bool
    ended: dt.date | None
    ended_in_part: bool
    residues: tuple[Residue, ...]


def over(one: PlantingFacts) -> dt.date | None:
    """The day the whole of a planting was over, or None while some of it stands."""
    ends = [end for end in one.ends if not end.regrows]
    if sum(end.area_m2 for end in ends) < one.area_m2 * WHOLE:
        return None
    return max(end.on for end in ends)


def rotation_row(farm: Farm, one: PlantingFacts) -> RotationRow:
    ends = [end for end in one.ends if not end.regrows]
    assert one.start is not None
    return RotationRow(
        year=farm.season_year(one.start),
        planting=one.id,
        kinds=tuple(dict.fromkeys(line.kind.name for line in one.lines)),
        families=tuple(dict.fromkeys(line.kind.family for line in one.lines)),
        purpose=one.purpose,
        start=one.start,
        is_plan=one.sown_on is None,
        ended=max((end.on for end in ends), default=None),
        ended_in_part=bool(ends) and over(one) is None,
        residues=tuple(dict.fromkeys(end.residue for end in ends)),
    )
