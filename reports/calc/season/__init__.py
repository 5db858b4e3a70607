"""The one room that combines formulas: one farm, one season."""

from reports.calc.season.page import summarize

__all__ = ["summarize"]
