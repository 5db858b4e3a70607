"""Whether a treatment on seed stands in the farm's own list of inputs as approved."""

from __future__ import annotations

import datetime as dt
import re

from django.db.models import Q

from farm.models import Farm
from records.models import InputProduct

PARTED = re.compile(r"[,;+/]| and ")


def approved_names(farm: Farm, *, by: dt.date) -> frozenset[str]:
    """Names of products that somebody approved, for a day; one query."""
    rows = InputProduct.objects.on(farm).live().exclude(approval="")
    rows = rows.filter(Q(approved_on=None) | Q(approved_on__lte=by))
    rows = rows.filter(Q(approved_until=None) | Q(approved_until__gte=by))
    names = rows.values_list("name", flat=True)
    return frozenset(name.strip().casefold() for name in names)


def are_approved(treatment: str, approved: frozenset[str]) -> bool:
    """Whether everything that is named on the seed is approved."""
    named = [one.strip().casefold() for one in PARTED.split(treatment) if one.strip()]
    return bool(named) and all(one in approved for one in named)
