"""The cheapest order of whole bags that covers what is needed."""

from reports.calc.order.checks import trouble_with
from reports.calc.order.plans import SECONDS_BESIDE, SECONDS_IN_FULL, cheapest, compared
from reports.calc.order.stock import aged_pls, drawn

__all__ = [
    "SECONDS_BESIDE",
    "SECONDS_IN_FULL",
    "aged_pls",
    "cheapest",
    "compared",
    "drawn",
    "trouble_with",
]
