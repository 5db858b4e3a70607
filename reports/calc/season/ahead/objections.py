"""What speaks against a kind in a gap, on this farm."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field

from reports.calc.shapes.gaps import Against, Gap, SeedHand
from reports.calc.shapes.ledger import KindFacts

GRAZING_HAZARDS = frozenset(
    {
        "bloat",
        "crotalaria_seed",
        "fagopyrism",
        "glucosinolate",
        "horses",
        "nitrate",
        "poison_seed",
        "prussic_acid",
        "vetch_toxicosis",
    }
)
NEAR_WHEAT = "near_wheat"
COMES_BACK = "volunteer"


@dataclass(frozen=True, slots=True)
class LotLeft:
    """What is left of a lot as pure live seed; as weighed where untested. [kg]"""

    live_kg: float
    tested: bool


@dataclass(frozen=True, slots=True)
class Farm:
    """What a farm has that speaks for or against a kind."""

    lots: Mapping[str, tuple[LotLeft, ...]] = field(default_factory=dict)
    wheat: bool = False
    animals: bool = False


def objections(
    gap: Gap, kind: KindFacts, seed: SeedHand, farm: Farm, *, time: bool, warm: bool
) -> Iterator[Against]:
    """Yield every reason against a kind, in the order of the list."""
    if kind.family and kind.family in gap.families_before:
        yield Against.FAMILY_BEFORE
    if kind.family and kind.family in gap.families_after:
        yield Against.FAMILY_AFTER
    if farm.wheat and NEAR_WHEAT in kind.cautions:
        yield Against.WHEAT_NEAR
    if farm.animals and GRAZING_HAZARDS & set(kind.cautions):
        yield Against.ANIMALS
    if COMES_BACK in kind.cautions:
        yield Against.COMES_BACK
    if not time:
        yield Against.NO_TIME
    elif not warm:
        yield Against.SOIL_COLD
    yield from _of_seed(seed)


def _of_seed(seed: SeedHand) -> Iterator[Against]:
    if seed.needed_kg is None:
        yield Against.RATE_UNKNOWN
    if not seed.lots or seed.on_hand_kg <= 0:
        yield Against.NO_SEED
        return
    if seed.untested:
        yield Against.SEED_UNTESTED
    if seed.needed_kg is not None and not seed.enough:
        yield Against.SEED_SHORT
