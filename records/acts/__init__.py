"""Writing down fast: one act, several places, one save for all or for none."""

from records.acts.again import Again, again, last_values, rates, seeds_query
from records.acts.base import ACTS, BY_ACT, Act
from records.acts.sheet import Sheet, places, sent_before, sheet

__all__ = [
    "ACTS",
    "BY_ACT",
    "Act",
    "Again",
    "Sheet",
    "again",
    "last_values",
    "places",
    "rates",
    "seeds_query",
    "sent_before",
    "sheet",
]
