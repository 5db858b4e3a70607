"""What has no page to cite: practice, memory, arithmetic and our own choices."""

# One source a line, so that the list reads as a bibliography.
# ruff: noqa: E501
# fmt: off

from __future__ import annotations

from reports.calc.sources.entry import Source, Tier

ENTRIES = (
    Source("ASSUMED", Tier.ASSUMED, "", "Our own assumption, open to be changed", None, "", "", False),
    Source("CALC", Tier.OURS, "", "Our own arithmetic on figures given here", None, "1 lb = 0.45359237 kg; 1 acre = 43,560 square feet", "", True),
    Source("COMMON", Tier.COMMON, "", "Common practice", None, "", "", False),
    Source("GENERAL", Tier.M, "", "General botanical knowledge: names, families, life cycles", None, "from memory", "", False),
    Source("MCCP3-C2", Tier.M, "SARE", "Managing cover crops profitably, 3rd edition, chart 2", 2007, "from memory, to be checked against the book", "", False),
    Source("MCCP3-C3A", Tier.M, "SARE", "Managing cover crops profitably, 3rd edition, chart 3A", 2007, "from memory, to be checked against the book", "", False),
    Source("MCCP3-C3B", Tier.M, "SARE", "Managing cover crops profitably, 3rd edition, chart 3B", 2007, "from memory, to be checked against the book", "", False),
    Source("MCCP3-TXT", Tier.M, "SARE", "Managing cover crops profitably, 3rd edition, species chapters", 2007, "from memory, to be checked against the book", "", False),
)
