"""What matters most for a field when a stand ends, and which residue serves it."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass
from enum import StrEnum

from reports.calc.shapes.basics import Between
from reports.calc.shapes.choice import ResidueChoice
from reports.calc.shapes.ledger import Residue


class Wish(StrEnum):
    """What a grower may want most of a residue."""

    WEEDS = "weeds"
    NITROGEN_SOON = "nitrogen_soon"
    PLANTING_SOON = "planting_soon"
    SOIL_KEPT = "soil_kept"


class Serves(StrEnum):
    """Why one way serves the wish, or why neither does more than the other."""

    HOLDS_WEEDS = "holds_weeds"
    HOLDS_WEEDS_IN_PART = "holds_weeds_in_part"
    NO_HOLD = "no_hold"
    MORE_NITROGEN = "more_nitrogen"
    NITROGEN_ALIKE = "nitrogen_alike"
    NITROGEN_TIED_UP = "nitrogen_tied_up"
    PLANTS_SOONER = "plants_sooner"
    PLANTS_ALIKE = "plants_alike"
    COVERS_SOIL = "covers_soil"
    COVERS_ALIKE = "covers_alike"
    NOT_KNOWN = "not_known"


@dataclass(frozen=True, slots=True)
class Advice:
    """Which way serves a wish, and why; ``way`` None where neither does."""

    wish: Wish
    way: Residue | None
    why: Serves


@dataclass(frozen=True, slots=True)
class YearsPoint:
    """What is left some days after the end, over the years on record.

    Masses in one year of ten and in nine of ten [kg/m²], cover as shares [0–1];
    ``holds_partly`` and ``holds_moderately`` are shares of years [0–1].
    """

    offset_days: int
    on: dt.date
    on_top_kg_m2: Between
    worked_in_kg_m2: Between
    cover: Between
    on_top_middle_kg_m2: float
    worked_in_middle_kg_m2: float
    cover_middle: float
    holds_partly: float
    holds_moderately: float


@dataclass(frozen=True, slots=True)
class EndChoice:
    """Both ways to leave a stand that ends on a day, with what serves which wish."""

    choice: ResidueChoice
    advice: tuple[Advice, ...]
    points: tuple[YearsPoint, ...]
    years: int
