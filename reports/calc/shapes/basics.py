"""Spans, ranges and how a figure came to be known."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass
from enum import StrEnum


@dataclass(frozen=True, slots=True)
class Span:
    """Days from ``first`` to ``last``, both counted."""

    first: dt.date
    last: dt.date

    @property
    def days(self) -> int:
        """Return how many days there are. [d]"""
        return (self.last - self.first).days + 1

    def __contains__(self, day: object) -> bool:
        return isinstance(day, dt.date) and self.first <= day <= self.last


@dataclass(frozen=True, slots=True)
class Between:
    """A range as its source prints it; a single figure has two equal ends."""

    low: float
    high: float

    @property
    def middle(self) -> float:
        """Return the middle of the range, in the range's own unit."""
        return (self.low + self.high) / 2


class How(StrEnum):
    """How a date or an amount came to be known, best first."""

    OBSERVED = "observed"
    SAMPLED = "sampled"
    HEAT = "heat"
    DAYS = "days"
    YEARS = "years"
    HANDBOOK = "handbook"
    ASSUMED = "assumed"
    UNKNOWN = "unknown"
