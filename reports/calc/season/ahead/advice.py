"""Which way to leave a residue serves what the grower wants most."""

from __future__ import annotations

from collections.abc import Iterator

from reports.calc.shapes.choice import HoldUntil, ResidueChoice, ResidueSide
from reports.calc.shapes.ledger import Residue
from reports.calc.shapes.wishes import Advice, Serves, Wish

ALIKE = 0.02  # unitless, indices nearer than this are one, [ASSUMED]


def advice_of(choice: ResidueChoice, *, transplants: bool) -> Iterator[Advice]:
    """Yield one answer for each wish, in the order of the list."""
    top, worked = choice.on_top, choice.worked_in
    if top is None or worked is None:
        for wish in Wish:
            yield Advice(wish, None, Serves.NOT_KNOWN)
        return
    yield _weeds(top)
    yield _nitrogen(top, worked)
    yield _planting(top, worked, transplants)
    yield _soil(top, worked)


def _weeds(top: ResidueSide) -> Advice:
    hold = top.hold
    # A killed buckwheat has no hold but the partial one, whatever its mass.
    if hold is not None and (_likely(hold.strong, top) or _likely(hold.moderate, top)):
        return Advice(Wish.WEEDS, Residue.ON_TOP, Serves.HOLDS_WEEDS)
    if hold is not None and _likely(hold.partial, top):
        return Advice(Wish.WEEDS, Residue.ON_TOP, Serves.HOLDS_WEEDS_IN_PART)
    return Advice(Wish.WEEDS, None, Serves.NO_HOLD)


def _likely(until: HoldUntil | None, top: ResidueSide) -> bool:
    """Return whether a hold likely lasts past the day of the end."""
    if until is None:
        return False
    return until.likely is None or until.likely > top.trace.start


def _nitrogen(top: ResidueSide, worked: ResidueSide) -> Advice:
    more, less = worked.nitrogen_six_weeks_kg_m2, top.nitrogen_six_weeks_kg_m2
    if more is None or less is None:
        return Advice(Wish.NITROGEN_SOON, None, Serves.NOT_KNOWN)
    if more.high <= 0:
        return Advice(Wish.NITROGEN_SOON, Residue.ON_TOP, Serves.NITROGEN_TIED_UP)
    if more.high > less.high:
        return Advice(Wish.NITROGEN_SOON, Residue.WORKED_IN, Serves.MORE_NITROGEN)
    return Advice(Wish.NITROGEN_SOON, None, Serves.NITROGEN_ALIKE)


def _planting(top: ResidueSide, worked: ResidueSide, transplants: bool) -> Advice:
    one, other = top.plant_back, worked.plant_back
    first = one.transplants if transplants else one.direct_large_seed
    second = other.transplants if transplants else other.direct_large_seed
    if first is None or second is None:
        return Advice(Wish.PLANTING_SOON, None, Serves.NOT_KNOWN)
    if first == second:
        return Advice(Wish.PLANTING_SOON, None, Serves.PLANTS_ALIKE)
    way = Residue.ON_TOP if first < second else Residue.WORKED_IN
    return Advice(Wish.PLANTING_SOON, way, Serves.PLANTS_SOONER)


def _soil(top: ResidueSide, worked: ResidueSide) -> Advice:
    gain = worked.erosion_index_60_days - top.erosion_index_60_days
    if gain > ALIKE:
        return Advice(Wish.SOIL_KEPT, Residue.ON_TOP, Serves.COVERS_SOIL)
    return Advice(Wish.SOIL_KEPT, None, Serves.COVERS_ALIKE)
