"""Seed: pure live seed, rates by weight and by number, mixes and drill checks."""

from reports.calc.seed.amounts import (
    after_headlands,
    fills,
    inoculant_kg,
    mix_by_weight,
    with_overage,
)
from reports.calc.seed.calibration import (
    caught_rate,
    row_in_area,
    run_for,
    spread_rate,
)
from reports.calc.seed.rates import (
    BROADCAST_FACTOR,
    BROADCAST_HIGH,
    BROADCAST_LOW,
    broadcast_rate,
    drill_catch_kg,
    mix_rates,
    seed_weight,
)
from reports.calc.seed.tag import (
    bulk_for,
    pls,
    rate_for_seeds,
    seeds_per_kg,
    seeds_per_m2,
)

__all__ = [
    "BROADCAST_FACTOR",
    "BROADCAST_HIGH",
    "BROADCAST_LOW",
    "after_headlands",
    "broadcast_rate",
    "bulk_for",
    "caught_rate",
    "drill_catch_kg",
    "fills",
    "inoculant_kg",
    "mix_by_weight",
    "mix_rates",
    "pls",
    "rate_for_seeds",
    "row_in_area",
    "run_for",
    "seed_weight",
    "seeds_per_kg",
    "seeds_per_m2",
    "spread_rate",
    "with_overage",
]
