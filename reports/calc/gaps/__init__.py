"""Gaps: days on which nothing grows, and which kind fits them best."""

from reports.calc.gaps.aims import aims_of
from reports.calc.gaps.order import WEIGHTY, ranked
from reports.calc.gaps.stretches import GAP_LEAST_D, Held, stretches

__all__ = ["GAP_LEAST_D", "WEIGHTY", "Held", "aims_of", "ranked", "stretches"]
