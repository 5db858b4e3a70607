"""The one bibliography: every source a figure or a formula may cite."""

from __future__ import annotations

from collections.abc import Mapping
from itertools import chain
from types import MappingProxyType

from reports.calc.sources import (
    agencies,
    cornell,
    extension,
    formulas,
    papers,
    practice,
    reprints,
    rules,
    vendors,
    weather,
)
from reports.calc.sources.entry import Source, Tier

__all__ = ["ENTRIES", "SOURCES", "Source", "Tier"]

ENTRIES: tuple[Source, ...] = tuple(
    chain(
        agencies.ENTRIES,
        cornell.ENTRIES,
        extension.ENTRIES,
        formulas.ENTRIES,
        papers.ENTRIES,
        practice.ENTRIES,
        reprints.ENTRIES,
        rules.ENTRIES,
        vendors.ENTRIES,
        weather.ENTRIES,
    )
)

SOURCES: Mapping[str, Source] = MappingProxyType({s.key: s for s in ENTRIES})
