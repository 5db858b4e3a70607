"""The season report: from the ledger to what the page prints."""

from __future__ import annotations

import datetime as dt
from typing import Any

from farm.models import Farm
from farm.units import System
from reports.calc.shapes.season import SeasonPage
from reports.ledger import Register
from reports.papers.layout import farm_strips, field_parts


def laid_out(
    page: SeasonPage, register: Register, *, farm: Farm, year: int, today: dt.date
) -> dict[str, Any]:
    """Everything the season report's templates print, as plain values."""
    return {
        "farm": farm,
        "year": year,
        "printed_on": today,
        "page": page,
        "register": register,
        "strips": tuple(farm_strips(page)),
        "parts": tuple(field_parts(page, System(farm.units))),
    }
