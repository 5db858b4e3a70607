"""What goes onto seed before sowing, and how much of it."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Dressing:
    """An inoculant or treatment for one kind, by the dose on its label.

    ``dose`` is product for a weight of seed [kg/kg]. ``until`` lies in the month to
    the end of which it is good.
    """

    id: int
    kind: str
    kind_name: str
    product: str
    dose: float
    lot: str
    until: dt.date | None
    is_inoculant: bool
    approval: str
    approved_until: dt.date | None = None


@dataclass(frozen=True, slots=True)
class Dressed:
    """A dressing for an amount of seed [kg], and whether its month is over by then."""

    dressing: Dressing
    seed_kg: float
    amount_kg: float
    is_past: bool
    is_approved: bool = True
