"""The two pages behind every figure: what was assumed, and what was read."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from farm.models import Farm
from reports.calc.assumptions import CHOICES, Choice
from reports.calc.shapes.ledger import Assumption
from reports.calc.sources import SOURCES, Source
from reports.ledger.assumptions import own_assumptions


@dataclass(frozen=True)
class AssumptionLine:
    """One of our choices, and the value in force on this farm."""

    choice: Choice
    ours: Assumption
    in_force: Assumption


def assumption_lines(farm: Farm) -> Iterator[AssumptionLine]:
    listed = own_assumptions(farm).listed()
    for choice, row in zip(CHOICES, listed, strict=True):
        ours = Assumption(choice.key, choice.value, choice.unit)
        yield AssumptionLine(choice, ours, row)


def every_source() -> list[Source]:
    return sorted(SOURCES.values(), key=lambda source: source.key)
