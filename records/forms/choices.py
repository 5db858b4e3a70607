"""Choices that say enough to be picked from."""

from __future__ import annotations

from typing import Any

from farm.forms.base import ModelChoiceField
from records.models import Planting


class PlantingChoice(ModelChoiceField[Planting]):
    """A planting told by field, kinds and day, the latest first."""

    def __init__(self, **options: Any) -> None:
        super().__init__(
            Planting.objects.filter(sown_on__isnull=False)
            .select_related("field")
            .prefetch_related("lines__kind")
            .order_by("-sown_on", "pk"),
            **options,
        )

    def label_from_instance(self, obj: Any) -> str:
        kinds = " + ".join(str(line.kind) for line in obj.lines.all())
        return f"{obj.field} · {kinds} · {obj.sown_on:%Y-%m-%d}"
