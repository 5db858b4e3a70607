"""Seed: pure live seed, rates by weight and by number, mixes and drill checks."""

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
    "broadcast_rate",
    "bulk_for",
    "drill_catch_kg",
    "mix_rates",
    "pls",
    "rate_for_seeds",
    "seed_weight",
    "seeds_per_kg",
    "seeds_per_m2",
]
