"""The choice of a seed lot: what is left of it, its test, and which goes first."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from django import forms
from django.db.models import Case, F, Value, When
from django.forms.models import ModelChoiceIterator
from django.utils.translation import gettext as _

from farm import units
from farm.models import Farm
from farm.templatetags.days import day_said
from farm.units import System
from records.models import SeedLot

# Scales: less than this is an empty bag.
EMPTY_KG = 0.005


class _Lots(ModelChoiceIterator):  # type: ignore[type-arg]
    def __iter__(self) -> Iterator[Any]:
        field: Any = self.field
        yield "", field.empty_label
        begun: set[int] = set()
        for row in self.queryset:
            if row.left_kg > EMPTY_KG or row.pk in field.keep:
                row.goes_first = row.left_kg > EMPTY_KG and row.kind_id not in begun
                begun |= {row.kind_id} if row.goes_first else set()
                yield self.choice(row)


class LotChoice(forms.ModelChoiceField):  # type: ignore[type-arg]
    """Lots with seed left, tested first at the top; a spent one where it was used."""

    iterator = _Lots

    def __init__(self, **options: Any) -> None:
        self.system = System.US
        self.keep: set[int] = set()
        super().__init__(SeedLot.objects.all(), **options)

    def of_farm(self, farm: Farm, used: Any) -> None:
        """Offer this farm's lots; ``used`` is the number of the lot in the box."""
        self.system = System(farm.units)
        self.keep = {int(used)} if str(used or "").isdigit() else set()
        others = Case(
            When(status=SeedLot.Status.ORGANIC, then=Value(0)), default=Value(1)
        )
        rows: Any = SeedLot.objects.on(farm).live().with_balance()
        self.queryset = (
            rows.select_related("kind")
            .prefetch_related("components")
            .order_by("kind__name", others, F("tested_on").asc(nulls_last=True), "pk")
        )

    def label_from_instance(self, row: Any) -> str:
        left = units.write_mass(max(0.0, row.left_kg), self.system)
        tested = _("not tested")
        if row.tested_on:
            tested = _("tested %s") % day_said(row.tested_on, "M Y")
        told = [str(row), _("%s left") % left, tested]
        if row.status != SeedLot.Status.ORGANIC:
            told.append(row.get_status_display())
        if getattr(row, "goes_first", False):
            told.append(_("goes first: the oldest test"))
        return ", ".join(told)
