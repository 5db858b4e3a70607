"""What is left of a lot: reckoned from what was written down, never kept."""

from __future__ import annotations

import datetime as dt
from typing import Any, Self

from django.db.models import (
    Case,
    DateField,
    F,
    FloatField,
    OuterRef,
    Subquery,
    Sum,
    Value,
    When,
)
from django.db.models.functions import Coalesce

from farm.models import RecordQuerySet

# Moves that add to a lot; all others take from it.
ADDING = ("received", "brought_back")
SIGNED_KG = Case(When(what__in=ADDING, then=F("mass_kg")), default=-F("mass_kg"))
BEFORE_ALL = Value(dt.date(1, 1, 1), output_field=DateField())


class LotQuerySet(RecordQuerySet[Any]):
    def with_balance(self, *, on: dt.date = dt.date.max) -> Self:
        """Each lot with what was sown, moved and counted of it, and what is left. [kg]

        A count sets the balance anew; what was sown on its day was sown before it.
        What came after the day ``on`` is left out.
        """
        counts = self._leaning("counts", "seed_lot").filter(counted_on__lte=on)
        counts = counts.order_by("-counted_on", "-pk")
        counted: Any = {
            "counted_on": Subquery(counts.values("counted_on")[:1]),
            "counted_kg": Subquery(counts.values("mass_kg")[:1]),
        }
        sown, moved = {"planting__sown_on__lte": on}, {"moved_on__lte": on}
        begun: Any = {"sown_kg": self._sown(**sown), "moved_kg": self._moved(**moved)}
        since = Coalesce(OuterRef("counted_on"), BEFORE_ALL, output_field=DateField())
        left: Any = (
            Coalesce(F("counted_kg"), F("received_kg"))
            + self._moved(moved_on__gt=since, **moved)
            - self._sown(planting__sown_on__gt=since, **sown)
        )
        return self.annotate(**counted, **begun).annotate(left_kg=left)

    def _leaning(self, name: str, link: str) -> Any:
        """Live rows of another table that tell of the lot."""
        rows: Any = self.model._meta.get_field(name).related_model
        return rows._default_manager.filter(**{link: OuterRef("pk"), "voided_at": None})

    def _sown(self, **narrowed: Any) -> Coalesce:
        lines: Any = self.model._meta.get_field("lines").related_model
        rows = lines._default_manager.filter(
            lot=OuterRef("pk"), planting__voided_at=None, **narrowed
        )
        return _summed(rows.filter(planting__sown_on__isnull=False), F("seed_kg"))

    def _moved(self, **narrowed: Any) -> Coalesce:
        return _summed(self._leaning("moves", "lot").filter(**narrowed), SIGNED_KG)


def _summed(rows: Any, mass: Any) -> Coalesce:
    by_lot = rows.order_by().values("lot").annotate(all_kg=Sum(mass))
    return Coalesce(Subquery(by_lot.values("all_kg"), output_field=FloatField()), 0.0)
