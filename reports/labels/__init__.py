"""The word or the sentence for every member that leaves the workshop."""

from __future__ import annotations

from collections.abc import Mapping
from enum import StrEnum
from typing import Any

from django.utils.functional import Promise

from reports.labels import (
    acts,
    ahead,
    choices,
    gaps,
    now,
    order,
    packet,
    plans,
    records,
    rules,
    season,
    trace,
    wishes,
)
from reports.labels.assumptions import ASSUMPTIONS, BASES, UNITS, USES
from reports.labels.cautions import CAUTIONS
from reports.labels.records import INPUTS
from reports.labels.sources import TIERS

Words = Mapping[Any, Promise]

# Members of two lists may be spelled alike, so each list keeps its own words.
LISTS: tuple[Words, ...] = (
    *records.LISTS,
    *season.LISTS,
    *packet.LISTS,
    *rules.LISTS,
    *trace.LISTS,
    *choices.LISTS,
    *order.LISTS,
    *ahead.LISTS,
    *acts.LISTS,
    *gaps.LISTS,
    *now.LISTS,
    *wishes.LISTS,
    *plans.LISTS,
    BASES,
    USES,
    TIERS,
)
LABELS: Mapping[type[StrEnum], Words] = {type(next(iter(row))): row for row in LISTS}


def label(member: StrEnum) -> str:
    """The words for a member of one of the workshop's lists."""
    return str(LABELS[type(member)][member])


__all__ = ["ASSUMPTIONS", "CAUTIONS", "INPUTS", "LABELS", "UNITS", "label"]
