"""Which acts a choice comes to, and which cautions of the kinds go with each."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator, Mapping

from reports.calc.season.ahead.objections import GRAZING_HAZARDS
from reports.calc.shapes.acts import Act, Warned
from reports.calc.shapes.ledger import Ending, PlantingFacts, Residue, Seen

BY_ENDING: Mapping[str, Act] = {
    Ending.GRAZED: Act.GRAZE,
    Ending.SPRAYED: Act.SPRAY,
    Ending.BURNED: Act.BURN,
    Ending.MOWN: Act.MACHINE,
    Ending.FLAIL_MOWN: Act.MACHINE,
    Ending.ROLLER_CRIMPED: Act.MACHINE,
    Ending.TILLED_IN: Act.MACHINE,
    Ending.UNDERCUT: Act.MACHINE,
    Ending.HARVESTED: Act.MACHINE,
}
BY_RESIDUE: Mapping[str, Act] = {
    Residue.GRAZED: Act.GRAZE,
    Residue.REMOVED: Act.FEED,
    Residue.WORKED_IN: Act.MACHINE,
}
OF_KINDS: Mapping[Act, frozenset[str]] = {
    Act.GRAZE: GRAZING_HAZARDS,
    Act.FEED: GRAZING_HAZARDS | {"moldy_hay"},
    Act.SPRAY: frozenset({"herbicide_carryover"}),
    Act.AFTER_SEED: frozenset({"volunteer", "crotalaria_seed", "poison_seed"}),
}
# Who asks for the care; kinds have sources of their own.
SOURCES: Mapping[Act, tuple[str, ...]] = {
    Act.GRAZE: ("CSU-BW", "CSU-VETCH"),
    Act.FEED: ("CSU-BW", "CSU-VETCH"),
    Act.SPRAY: ("CFR170", "CFR205"),
    Act.BURN: ("CFR205", "COMMON"),
    Act.MACHINE: ("COMMON",),
    Act.AFTER_SEED: ("CORN-HB-KEY", "OMAFRA-BW"),
    Act.MANURE: ("CFR205", "CFR112"),
}


def acts_in(
    *,
    ending: str = "",
    residue: str = "",
    manure: bool = False,
    pests: bool = False,
    planting: PlantingFacts | None = None,
    seed_from: dt.date | None = None,
    on: dt.date | None = None,
) -> Iterator[Warned]:
    """Yield every act a choice comes to, in the order of the list.

    ``seed_from`` is the day from which the stand's seed can sprout, seen or foretold.
    """
    found = {BY_ENDING.get(ending), BY_RESIDUE.get(residue)}
    found |= {Act.MANURE} if manure else set()
    # What kills pests, weeds or a stand is mostly sprayed, and has a label.
    found |= {Act.SPRAY} if pests else set()
    if planting is not None and _after_seed(planting, seed_from, on):
        found.add(Act.AFTER_SEED)
    kinds = (
        {key for line in planting.lines for key in line.kind.cautions}
        if (planting is not None)
        else set()
    )
    for act in Act:
        if act in found:
            hazards = OF_KINDS.get(act, frozenset())
            yield Warned(act, tuple(sorted(kinds & hazards)), SOURCES[act])


def _after_seed(
    planting: PlantingFacts, seed_from: dt.date | None, on: dt.date | None
) -> bool:
    if on is None:
        return False
    seen = any(
        row.seen is Seen.SEED_SET and row.on <= on for row in planting.observations
    )
    return seen or (seed_from is not None and on >= seed_from)
