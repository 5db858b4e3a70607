"""What machines were set to, and what they dropped: one query each."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass

from farm.models import Farm
from records.models import Calibration, Equipment
from reports.calc.seed import caught_rate, spread_rate
from reports.calc.shapes.ledger import Method

# A drill does not broadcast, and a spreader sows no rows.
NOT_FOR = {
    Method.DRILLED: Equipment.Part.SPREADER.value,
    Method.BROADCAST: Equipment.Part.DRILL.value,
    Method.FROST_SEEDED: Equipment.Part.DRILL.value,
}


@dataclass(frozen=True)
class Setting:
    """One calibration with the rate it came to. [kg/m²]"""

    id: int
    machine: str
    part: str
    kind: str
    kind_name: str
    on: dt.date
    setting: str
    rate_kg_m2: float
    wanted_kg_m2: float | None

    @property
    def off(self) -> float | None:
        """Share by which the machine drops more than wanted, below 0 for less."""
        if self.wanted_kg_m2 is None:
            return None
        return self.rate_kg_m2 / self.wanted_kg_m2 - 1


def settings_of(farm: Farm) -> list[Setting]:
    """Every calibration, the latest first."""
    rows = Calibration.objects.on(farm).live().select_related("equipment", "kind")
    return [_setting(row) for row in rows.order_by("-calibrated_on", "-pk")]


def _setting(row: Calibration) -> Setting:
    return Setting(
        id=row.pk,
        machine=row.equipment.name,
        part=row.equipment.part,
        kind=row.kind.slug,
        kind_name=str(row.kind),
        on=row.calibrated_on,
        setting=row.setting,
        rate_kg_m2=_rate(row),
        wanted_kg_m2=row.wanted_kg_m2,
    )


def _rate(row: Calibration) -> float:
    if row.distance_m and row.row_width_m and row.rows:
        return caught_rate(
            caught_kg=row.caught_kg,
            row_spacing_m=row.row_width_m,
            distance_m=row.distance_m,
            rows=row.rows,
        )
    return spread_rate(spread_kg=row.caught_kg, area_m2=row.area_m2 or 0.0)


def latest(
    settings: list[Setting], kind: str, by: dt.date, method: Method
) -> Setting | None:
    """The setting last found for a kind by a day, on a machine for this way."""
    other = NOT_FOR.get(method, "")
    fit = (row for row in settings if row.kind == kind and row.on <= by)
    return next((row for row in fit if row.part != other), None)
