"""Lists of findings as they stood on other days, and what the certifier was told."""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping
from dataclasses import dataclass

from farm.models import Farm
from records.kept_findings import Why, keep, kept
from records.models import ChangeTold, KeptFindings

__all__ = ["KeptFindings", "Told", "Why", "changes_told", "keep", "kept"]


@dataclass(frozen=True)
class Told:
    """When and how the certifier was told of a change."""

    id: int
    on: dt.date
    how: str


def changes_told(farm: Farm) -> Mapping[str, Told]:
    """What the certifier was told of, by the change: one query."""
    rows = ChangeTold.objects.on(farm).live()
    return {row.key: Told(row.pk, row.told_on, row.how) for row in rows}
