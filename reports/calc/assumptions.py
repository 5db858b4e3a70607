"""The one list of our own choices: no source gives them, the farm may change them."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from enum import StrEnum

from reports.calc.shapes.basics import Between
from reports.calc.shapes.ledger import Assumption


class Basis(StrEnum):
    """Where a choice comes from: thought out, or fitted to measurements."""

    ASSUMED = "assumed"
    FIT = "fit"


class Use(StrEnum):
    """What a choice bears on."""

    GROWTH = "growth"
    COVER = "cover"
    WEEDS = "weeds"
    RESIDUE = "residue"
    NITROGEN = "nitrogen"
    PLANT_BACK = "plant_back"
    SEED = "seed"
    WINDOWS = "windows"


@dataclass(frozen=True, slots=True)
class Choice:
    """One of our own choices.

    ``changeable`` is False where a model holds together only with it.
    ``source`` names what the choice leans on.
    """

    key: str
    value: float
    unit: str
    range: Between
    basis: Basis
    uses: tuple[Use, ...]
    source: str = "ASSUMED"
    changeable: bool = True


def _assumed(
    key: str, value: float, unit: str, low: float, high: float, *uses: Use
) -> Choice:
    return Choice(key, value, unit, Between(low, high), Basis.ASSUMED, uses)


def _fitted(key: str, value: float, unit: str, low: float, high: float) -> Choice:
    span = Between(low, high)
    return Choice(key, value, unit, span, Basis.FIT, (Use.RESIDUE,), changeable=False)


def _practice(
    key: str, value: float, unit: str, low: float, high: float, *uses: Use
) -> Choice:
    span = Between(low, high)
    return Choice(key, value, unit, span, Basis.ASSUMED, uses, source="COMMON")


CHOICES: tuple[Choice, ...] = (
    _assumed("emergence_days", 7, "d", 3, 21, Use.GROWTH, Use.COVER),
    _assumed("buckwheat_canopy_days", 21, "d", 14, 35, Use.GROWTH, Use.WEEDS),
    # 300 °F-days above 50 °F.
    _assumed(
        "buckwheat_canopy_heat", 300 * 5 / 9, "°C-day", 100, 300, Use.GROWTH, Use.WEEDS
    ),
    _assumed("buckwheat_heat_base", 10, "°C", 4, 12, Use.GROWTH, Use.WEEDS),
    _assumed("full_bloom_share", 0.5, "share", 0.25, 0.9, Use.GROWTH),
    _assumed("days_emerged_to_closed", 30, "d", 10, 90, Use.COVER),
    _assumed("closed_cover", 0.80, "share", 0.6, 1.0, Use.COVER, Use.WEEDS),
    _assumed("fullest_cover", 0.95, "share", 0.8, 1.0, Use.COVER),
    _assumed("residue_counts_from", 0.30, "share", 0.1, 0.6, Use.COVER),
    _assumed("sample_days_before_end", 14, "d", 0, 60, Use.RESIDUE),
    _assumed("decay_slow", 0.7, "ratio", 0.4, 1.0, Use.RESIDUE, Use.WEEDS),
    _assumed("decay_fast", 1.4, "ratio", 1.0, 1.4, Use.RESIDUE, Use.WEEDS),
    _assumed("leaf_share", 0.45, "share", 0.0, 0.6, Use.RESIDUE),
    _assumed("cover_area", 5.228, "m²/kg", 1.9, 5.3, Use.RESIDUE, Use.COVER),
    _assumed("doubtful_below_left", 0.4, "share", 0.0, 1.0, Use.COVER),
    _assumed("half_life_on_top", 65, "d", 20, 200, Use.RESIDUE),
    _assumed("half_life_worked_in", 35, "d", 10, 120, Use.RESIDUE),
    _fitted("flat_wet_from_below", 0.2, "ratio", 0.0, 0.4),
    _fitted("soil_water_full", 66, "mm", 25, 100),
    _fitted("buried_least_wet", 0.3, "share", 0.0, 0.5),
    _assumed("mulch_strong", 0.8, "kg/m²", 0.5, 1.2, Use.WEEDS),
    _assumed("mulch_moderate", 0.5, "kg/m²", 0.3, 0.8, Use.WEEDS),
    _assumed("mulch_partial_cover", 0.80, "share", 0.5, 0.95, Use.WEEDS),
    _assumed("nitrogen_on_top_warm", 0.8, "ratio", 0.3, 1.0, Use.NITROGEN),
    _assumed("nitrogen_on_top_cool", 0.5, "ratio", 0.2, 1.0, Use.NITROGEN),
    _assumed("nitrogen_release_days", 42, "d", 28, 70, Use.NITROGEN),
    _assumed("plant_back_young", 7, "d", 3, 21, Use.PLANT_BACK),
    _assumed("plant_back_mixed", 14, "d", 7, 28, Use.PLANT_BACK),
    _assumed("plant_back_small_seed", 21, "d", 14, 42, Use.PLANT_BACK),
    _assumed("broadcast_factor", 1.4, "ratio", 1.2, 1.5, Use.SEED),
    _assumed("rate_tolerance", 0.10, "share", 0.0, 0.3, Use.SEED),
    _assumed("seed_overage", 0.05, "share", 0.0, 0.5, Use.SEED),
    _assumed("seed_loss_a_year", 0.10, "share", 0.0, 1.0, Use.SEED),
    _assumed("seed_oldest_years", 3, "years", 0.5, 10, Use.SEED),
    _assumed("seed_test_months", 12, "months", 1, 60, Use.SEED),
    _practice("search_sources", 3, "sources", 1, 10, Use.SEED),
    _assumed("sow_chance", 0.8, "share", 0.5, 0.95, Use.WINDOWS),
    _assumed("soil_warm_days", 7, "d", 3, 21, Use.WINDOWS),
    # 40 °F, below which little grows.
    _assumed("growth_stops_c", 40 / 9, "°C", 0, 10, Use.WINDOWS),
    _assumed("rain_week_mm", 10, "mm", 2, 40, Use.WINDOWS),
)
BY_KEY: Mapping[str, Choice] = {choice.key: choice for choice in CHOICES}


@dataclass(frozen=True, slots=True)
class Assumptions(Mapping[str, float]):
    """Our choices with the farm's own values laid over them.

    Parameters
    ----------
    own : Mapping of str to float
        The farm's values by key, in the choice's unit.

    Raises
    ------
    KeyError
        If a key is not on the list.
    ValueError
        If a choice may not be changed, or a value is outside its range.

    Examples
    --------
    >>> Assumptions({"emergence_days": 5})["emergence_days"]
    5
    >>> Assumptions()["emergence_days"]
    7
    """

    own: Mapping[str, float] = field(default_factory=dict)

    def __post_init__(self) -> None:
        for key, value in self.own.items():
            choice = BY_KEY[key]
            if not choice.changeable:
                raise ValueError(f"{key} may not be changed")
            if not choice.range.low <= value <= choice.range.high:
                raise ValueError(f"{key} is outside its range")

    def __getitem__(self, key: str) -> float:
        return self.own[key] if key in self.own else BY_KEY[key].value

    def __iter__(self) -> Iterator[str]:
        return iter(BY_KEY)

    def __len__(self) -> int:
        return len(BY_KEY)

    def listed(self) -> tuple[Assumption, ...]:
        """Return every choice with the value in force, as printed in the appendix."""
        return tuple(
            Assumption(row.key, self[row.key], row.unit, row.key in self.own)
            for row in CHOICES
        )
