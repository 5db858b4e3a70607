"""What machines were set to, and what they dropped: one query each."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from farm.models import Farm
from records.models import Calibration, SeedLine
from reports.calc.seed import caught_rate, spread_rate


@dataclass(frozen=True)
class Setting:
    """One calibration with the rate it came to. [kg/m²]"""

    id: int
    machine: str
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


@dataclass(frozen=True)
class SownRate:
    """What really went onto a field, beside what a setting was meant to give."""

    field_name: str
    kind_name: str
    on: dt.date
    area_m2: float
    seed_kg: float
    rate_kg_m2: float
    setting: Setting | None


def settings_of(farm: Farm) -> list[Setting]:
    """Every calibration, the latest first."""
    rows = Calibration.objects.on(farm).live().select_related("equipment", "kind")
    return [_setting(row) for row in rows.order_by("-calibrated_on", "-pk")]


def _setting(row: Calibration) -> Setting:
    return Setting(
        id=row.pk,
        machine=row.equipment.name,
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


def latest(settings: list[Setting], kind: str, by: dt.date) -> Setting | None:
    """The setting last found for a kind by a day."""
    fit = (row for row in settings if row.kind == kind and row.on <= by)
    return next(fit, None)


def sown_rates(
    farm: Farm, first: dt.date, last: dt.date, settings: list[Setting]
) -> Iterator[SownRate]:
    """Seed weighed and ground sown in a period, line by line."""
    lines: Any = SeedLine.objects.filter(
        planting__farm=farm,
        planting__voided_at=None,
        planting__sown_on__range=(first, last),
        seed_kg__gt=0,
    ).select_related("planting__field", "kind")
    for line in lines.order_by("planting__sown_on", "pk"):
        planting = line.planting
        yield SownRate(
            field_name=planting.field.name,
            kind_name=str(line.kind),
            on=planting.sown_on,
            area_m2=planting.area_m2,
            seed_kg=line.seed_kg,
            rate_kg_m2=spread_rate(spread_kg=line.seed_kg, area_m2=planting.area_m2),
            setting=latest(settings, line.kind.slug, planting.sown_on),
        )
