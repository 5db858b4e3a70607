"""What is said of kinds by yes or no, the farm's own word before the catalogue's."""

from __future__ import annotations

from collections.abc import Mapping

from farm.models import Farm
from records.figures import FLAGS
from records.models import FarmFigure, KindFigure

Flags = Mapping[str, frozenset[int]]


def flags_of(farm: Farm) -> Flags:
    """The kinds of which each is said: two queries."""
    said: dict[tuple[int, str], bool] = {}
    printed = KindFigure.objects.filter(attribute__in=FLAGS)
    own = FarmFigure.objects.on(farm).live().filter(attribute__in=FLAGS)
    for rows in (printed, own):
        for kind, flag, low in rows.values_list("kind_id", "attribute", "low"):
            said[kind, flag] = low > 0
    return {
        name: frozenset(
            kind for (kind, flag), yes in said.items() if yes and flag == name
        )
        for name in FLAGS
    }
