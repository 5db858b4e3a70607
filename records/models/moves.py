"""What came to a seed lot or left it, apart from sowing."""

from __future__ import annotations

from typing import Any, ClassVar

from django.db import models
from django.db.models import Q
from django.utils.translation import gettext_lazy as _

from farm.models import Record, RecordQuerySet
from records.models.balances import ADDING
from records.models.seeds import SeedLot


class LotMove(Record):
    DATE_FIELD = "moved_on"

    class What(models.TextChoices):
        RECEIVED = "received", _("more of it received")
        BROUGHT_BACK = "brought_back", _("brought back from the field")
        RETURNED = "returned", _("returned to the supplier")
        PASSED_ON = "passed_on", _("sold or given away")
        DISCARDED = "discarded", _("discarded")

    lot = models.ForeignKey(
        SeedLot,
        on_delete=models.PROTECT,
        related_name="moves",
        verbose_name=_("seed lot"),
    )
    what = models.CharField(_("what became of it"), max_length=12, choices=What.choices)
    moved_on = models.DateField(_("on"))
    mass_kg = models.FloatField(_("weight"))

    objects: ClassVar[models.Manager[Any]] = RecordQuerySet.as_manager()

    class Meta(Record.Meta):
        verbose_name = _("lot coming or going")
        verbose_name_plural = _("lots coming and going")
        constraints = [
            *Record.Meta.constraints,
            models.CheckConstraint(
                condition=Q(mass_kg__gt=0),
                name="move_weighs_something",
                violation_error_message=_("A weight is more than nothing."),
            ),
        ]

    def __str__(self) -> str:
        return f"{self.lot} · {self.get_what_display()} · {self.moved_on}"

    @property
    def signed_kg(self) -> float:
        """What it adds to the lot, below nothing where it takes away."""
        return self.mass_kg if self.what in ADDING else -self.mass_kg
