"""Films and tarps that were laid on the ground."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Laid:
    """A sheet on the ground, from the day it was laid. [m²]"""

    id: int
    field_id: int
    material: str
    on: dt.date
    area_m2: float = 0.0
    stand_id: int | None = None
    off_on: dt.date | None = None
    went: str = ""
    words: str = ""
    approval: str = ""
    done_by: str = ""

    def lies_in(self, first: dt.date, last: dt.date) -> bool:
        """Tell whether it lay on any day from ``first`` to ``last``."""
        return self.on <= last and (self.off_on is None or self.off_on >= first)
