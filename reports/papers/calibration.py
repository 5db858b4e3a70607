"""Calibration: what should be caught, what was caught, and what was really sown."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass
from typing import Any

from farm.models import Farm
from reports.calc.seed import drill_catch_kg, run_for, seed_weight
from reports.forms.calibration import CatchForm
from reports.ledger.settings import settings_of
from reports.papers.sown_rates import sown_parts


@dataclass(frozen=True, slots=True)
class Catch:
    """What should be caught, in all and from one row, and how far to drive."""

    all_kg: float
    row_kg: float | None
    run_m: float | None


def calibration_paper(farm: Farm, form: CatchForm, *, today: dt.date) -> dict[str, Any]:
    """The page of settings; a catch where enough was asked."""
    settings = settings_of(farm)
    first, last = farm.season(farm.season_year(today))
    return {
        "farm": farm,
        "form": form,
        "catch": catch_of(form.cleaned_data) if form.is_valid() else None,
        "settings": settings,
        "sown": sown_parts(farm, first, last, settings),
    }


def catch_of(asked: dict[str, Any]) -> Catch:
    """What the rate wanted drops on the ground told of."""
    rate, spacing = asked["rate_kg_m2"], asked["row_width_m"]
    rows, area, distance = asked["rows"] or 1, asked["area_m2"], asked["distance_m"]
    if area:
        run = run_for(area_m2=area, width_m=spacing * rows) if spacing else None
        whole = seed_weight(rate_kg_m2=rate, area_m2=area)
        return Catch(whole, whole / rows if spacing else None, run)
    one = drill_catch_kg(rate_kg_m2=rate, row_spacing_m=spacing, distance_m=distance)
    return Catch(one * rows, one, None)
