"""Which sources stand behind what a season page shows."""

from __future__ import annotations

from collections.abc import Iterable

from reports.calc.shapes.basics import How
from reports.calc.shapes.choice import ResidueChoice
from reports.calc.shapes.season import FieldSeason, FrostSummary, PlantingSeason

COVER = ("AGROSCOPE-SAEDN", "BUCHI16", "UNL-G20")
RESIDUE = ("CFACTOR", "GHIDEY93", "GREGORY82", "UPGM", "WEPP9", "WEPS")
WEEDS = ("CORN-HB-BEN", "MIRSKY13", "NICHOLS20")
MODELS = (*RESIDUE, *WEEDS)
NITROGEN = ("MCCP3-N", "NCSU-BIO", "PNW636")
SAMPLED = "NCSU-BIO"
HEAT = "MCMASTER97"
FROST = "NCEI-NORMALS"


def sources_of(
    fields: Iterable[FieldSeason], frost: FrostSummary | None
) -> tuple[str, ...]:
    """Return the keys of every source a season page leans on, sorted."""
    keys = {*COVER, FROST} if frost is not None else set(COVER)
    for field in fields:
        for planting in field.plantings:
            _add_planting(keys, planting)
    return tuple(sorted(keys - {""}))


def _add_planting(keys: set[str], planting: PlantingSeason) -> None:
    for stage in planting.stages:
        keys.add(stage.source)
        if stage.how is How.HEAT:
            keys.add(HEAT)
    for use in planting.seed:
        keys.update(use.sources)
    for choice in planting.choices:
        _add_choice(keys, choice)


def _add_choice(keys: set[str], choice: ResidueChoice) -> None:
    keys.add(choice.mass_source)
    keys.update(choice.figure_sources)
    if choice.mass_how is How.SAMPLED:
        keys.add(SAMPLED)
    if choice.on_top is None or choice.worked_in is None:
        return
    keys.update(MODELS)
    keys.update(choice.on_top.plant_back.sources)
    keys.update(choice.worked_in.plant_back.sources)
    if choice.nitrogen_share is not None:
        keys.update(NITROGEN)
