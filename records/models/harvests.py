"""What left the field: harvest lots, where they lie, and to whom they went."""

from __future__ import annotations

from typing import Any, ClassVar

from django.db import models
from django.db.models import Q
from django.utils.translation import gettext_lazy as _

from farm.models import Field, Record, RecordQuerySet
from records.models.plantings import Planting


class HarvestLot(Record):
    DATE_FIELD = "harvested_on"

    class Use(models.TextChoices):
        FOOD = "food", _("food")
        FEED = "feed", _("hay or feed")
        SEED = "seed", _("seed saved")
        OTHER = "other", _("other")

    class Status(models.TextChoices):
        ORGANIC = "organic", _("organic")
        TRANSITIONAL = "transitional", _("transitional")
        NOT_ORGANIC = "not_organic", _("not organic")

    code = models.CharField(_("lot code"), max_length=60)
    field = models.ForeignKey(
        Field,
        on_delete=models.PROTECT,
        related_name="harvest_lots",
        verbose_name=_("field"),
    )
    planting = models.ForeignKey(
        Planting,
        on_delete=models.PROTECT,
        related_name="harvest_lots",
        null=True,
        blank=True,
        verbose_name=_("planting"),
    )
    crop = models.CharField(_("what was harvested"), max_length=120)
    harvested_on = models.DateField(_("harvested on"))
    mass_kg = models.FloatField(_("weight"))
    use = models.CharField(_("for"), max_length=5, choices=Use.choices)
    status = models.CharField(_("status"), max_length=12, choices=Status.choices)
    from_buffer = models.BooleanField(_("from a buffer"), default=False)
    touches_soil = models.BooleanField(
        _("the part eaten touches the soil"), null=True, blank=True
    )

    objects: ClassVar[models.Manager[Any]] = RecordQuerySet.as_manager()

    class Meta(Record.Meta):
        verbose_name = _("harvest lot")
        verbose_name_plural = _("harvest lots")
        constraints = [
            *Record.Meta.constraints,
            models.CheckConstraint(
                condition=Q(mass_kg__gt=0), name="harvest_has_a_weight"
            ),
            models.UniqueConstraint(
                "farm",
                "code",
                condition=Q(voided_at=None),
                name="harvest_code_once_a_farm",
                violation_error_message=_("Another lot has this code."),
            ),
        ]

    def __str__(self) -> str:
        return f"{self.code} · {self.crop}"


class Storage(Record):
    """A harvest lot put into a store, or taken out of it."""

    DATE_FIELD = "stored_on"

    lot = models.ForeignKey(
        HarvestLot,
        on_delete=models.PROTECT,
        related_name="storages",
        verbose_name=_("harvest lot"),
    )
    stored_on = models.DateField(_("stored on"))
    place = models.CharField(_("place"), max_length=120)
    mass_kg = models.FloatField(_("weight"))

    objects: ClassVar[models.Manager[Any]] = RecordQuerySet.as_manager()

    class Meta(Record.Meta):
        verbose_name = _("storage")
        verbose_name_plural = _("storages")
        constraints = [
            *Record.Meta.constraints,
            models.CheckConstraint(
                condition=Q(mass_kg__gt=0), name="storage_has_a_weight"
            ),
        ]

    def __str__(self) -> str:
        return f"{self.lot} · {self.place}"


class Sale(Record):
    DATE_FIELD = "sold_on"

    lot = models.ForeignKey(
        HarvestLot,
        on_delete=models.PROTECT,
        related_name="sales",
        verbose_name=_("harvest lot"),
    )
    sold_on = models.DateField(_("sold or used on"))
    buyer = models.CharField(_("buyer, or use"), max_length=120)
    mass_kg = models.FloatField(_("weight"))
    status = models.CharField(
        _("status on the papers"), max_length=12, choices=HarvestLot.Status.choices
    )
    invoice = models.CharField(_("invoice"), max_length=60, blank=True)
    transport = models.CharField(_("transport"), max_length=120, blank=True)

    objects: ClassVar[models.Manager[Any]] = RecordQuerySet.as_manager()

    class Meta(Record.Meta):
        verbose_name = _("sale or use")
        verbose_name_plural = _("sales and uses")
        constraints = [
            *Record.Meta.constraints,
            models.CheckConstraint(
                condition=Q(mass_kg__gt=0), name="sale_has_a_weight"
            ),
        ]

    def __str__(self) -> str:
        return f"{self.lot} · {self.buyer}"
