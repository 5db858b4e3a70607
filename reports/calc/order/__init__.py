"""The cheapest order of whole bags that covers what is needed."""

from reports.calc.order.checks import trouble_with
from reports.calc.order.plans import cheapest, compared
from reports.calc.order.stock import aged_pls, drawn

__all__ = ["aged_pls", "cheapest", "compared", "drawn", "trouble_with"]
