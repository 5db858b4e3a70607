"""Counts, clean-outs, incidents and training: what keeps the books straight."""

from __future__ import annotations

from typing import Any, ClassVar

from django.db import models
from django.db.models import Q
from django.utils.translation import gettext_lazy as _

from farm.models import Field, Record, RecordQuerySet
from records.models.harvests import HarvestLot
from records.models.inputs import InputProduct
from records.models.seeds import SeedLot
from records.models.trade import Equipment

ONE_THING = (
    Q(seed_lot__isnull=False, harvest_lot=None, product=None)
    | Q(seed_lot=None, harvest_lot__isnull=False, product=None)
    | Q(seed_lot=None, harvest_lot=None, product__isnull=False)
)


class StockCount(Record):
    DATE_FIELD = "counted_on"

    counted_on = models.DateField(_("counted on"))
    seed_lot = models.ForeignKey(
        SeedLot,
        on_delete=models.PROTECT,
        related_name="counts",
        null=True,
        blank=True,
        verbose_name=_("seed lot"),
    )
    harvest_lot = models.ForeignKey(
        HarvestLot,
        on_delete=models.PROTECT,
        related_name="counts",
        null=True,
        blank=True,
        verbose_name=_("harvest lot"),
    )
    product = models.ForeignKey(
        InputProduct,
        on_delete=models.PROTECT,
        related_name="counts",
        null=True,
        blank=True,
        verbose_name=_("input product"),
    )
    mass_kg = models.FloatField(_("weight found"))

    objects: ClassVar[models.Manager[Any]] = RecordQuerySet.as_manager()

    class Meta(Record.Meta):
        verbose_name = _("stock count")
        verbose_name_plural = _("stock counts")
        constraints = [
            *Record.Meta.constraints,
            models.CheckConstraint(
                condition=Q(mass_kg__gte=0), name="count_not_below_zero"
            ),
            models.CheckConstraint(
                condition=ONE_THING,
                name="count_is_of_one_thing",
                violation_error_message=_(
                    "Count one thing: a seed lot, a harvest lot or a product."
                ),
            ),
        ]

    def __str__(self) -> str:
        return (
            f"{self.seed_lot or self.harvest_lot or self.product} · {self.counted_on}"
        )


class CleanOut(Record):
    DATE_FIELD = "cleaned_on"

    equipment = models.ForeignKey(
        Equipment,
        on_delete=models.PROTECT,
        related_name="clean_outs",
        verbose_name=_("machine or store"),
    )
    cleaned_on = models.DateField(_("cleaned on"))
    held_before = models.CharField(_("what it held before"), max_length=120)
    method = models.CharField(_("how"), max_length=200)

    objects: ClassVar[models.Manager[Any]] = RecordQuerySet.as_manager()

    class Meta(Record.Meta):
        verbose_name = _("clean-out")
        verbose_name_plural = _("clean-outs")

    def __str__(self) -> str:
        return f"{self.equipment} · {self.cleaned_on}"


class Incident(Record):
    DATE_FIELD = "noticed_on"

    class What(models.TextChoices):
        DRIFT = "drift", _("spray drift")
        FLOOD = "flood", _("flood or run-off")
        MIX_UP = "mix_up", _("mix-up of lots")
        SPILL = "spill", _("spill")
        ANIMALS = "animals", _("animals in the field")
        INJURY = "injury", _("injury")
        OTHER = "other", _("other")

    noticed_on = models.DateField(_("noticed on"))
    what = models.CharField(_("what it was"), max_length=8, choices=What.choices)
    field = models.ForeignKey(
        Field,
        on_delete=models.PROTECT,
        related_name="incidents",
        null=True,
        blank=True,
        verbose_name=_("field"),
    )
    account = models.TextField(_("what happened"), max_length=2000)
    done_about_it = models.TextField(_("what was done"), max_length=2000, blank=True)
    told_to = models.CharField(_("who was told, and when"), max_length=200, blank=True)

    objects: ClassVar[models.Manager[Any]] = RecordQuerySet.as_manager()

    class Meta(Record.Meta):
        verbose_name = _("incident")
        verbose_name_plural = _("incidents")

    def __str__(self) -> str:
        return f"{self.get_what_display()} · {self.noticed_on}"


class Training(Record):
    DATE_FIELD = "trained_on"

    class Subject(models.TextChoices):
        WORKERS = "workers", _("worker protection where something was sprayed")
        FOOD = "food", _("food safety")
        OTHER = "other", _("something else")

    trained_on = models.DateField(_("trained on"))
    person = models.CharField(_("person"), max_length=120)
    subject = models.CharField(
        _("what it counts as"),
        max_length=7,
        choices=Subject.choices,
        default=Subject.OTHER,
    )
    topic = models.CharField(_("topic"), max_length=200)
    trainer = models.CharField(_("trainer"), max_length=120, blank=True)
    valid_until = models.DateField(_("holds until"), null=True, blank=True)

    objects: ClassVar[models.Manager[Any]] = RecordQuerySet.as_manager()

    class Meta(Record.Meta):
        verbose_name = _("training")
        verbose_name_plural = _("trainings")

    def __str__(self) -> str:
        return f"{self.person} · {self.topic}"
