"""Which sources stand behind what a season page shows."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from reports.calc.shapes.basics import How
from reports.calc.shapes.choice import ResidueChoice
from reports.calc.shapes.season import FieldSeason, FrostSummary, PlantingSeason

COVER = ("AGROSCOPE-SAEDN", "BUCHI16", "UNL-G20")
RESIDUE = ("CFACTOR", "GHIDEY93", "GREGORY82", "UPGM", "WEPP9", "WEPS")
WEEDS = ("MIRSKY13", "NICHOLS20")
BUCKWHEAT_WEEDS = "CORN-HB-BEN"
NITROGEN = ("MCCP3-N", "NCSU-BIO", "PNW636")
SAMPLED = "NCSU-BIO"
HEAT = "MCMASTER97"
FROST = "NCEI-NORMALS"


def sources_of(
    fields: Iterable[FieldSeason], frost: FrostSummary | None
) -> tuple[str, ...]:
    """Return the keys of every source a season page leans on, sorted."""
    keys = set(COVER)
    if frost is not None:
        keys.add(FROST)
    for field in fields:
        for planting in field.plantings:
            keys.update(_of_planting(planting))
    return tuple(sorted(keys - {""}))


def _of_planting(planting: PlantingSeason) -> Iterator[str]:
    for stage in planting.stages:
        yield stage.source
        if stage.how is How.HEAT:
            yield HEAT
    for use in planting.seed:
        yield from use.sources
    for choice in planting.choices:
        yield from _of_choice(choice)


def _of_choice(choice: ResidueChoice) -> Iterator[str]:
    yield choice.mass_source
    yield from choice.figure_sources
    if choice.mass_how is How.SAMPLED:
        yield SAMPLED
    if choice.on_top is None or choice.worked_in is None:
        return
    yield from RESIDUE
    yield from WEEDS
    yield BUCKWHEAT_WEEDS
    yield from choice.on_top.plant_back.sources
    yield from choice.worked_in.plant_back.sources
    if choice.nitrogen_share is not None:
        yield from NITROGEN
