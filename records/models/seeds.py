"""Seed lots, as the tag says."""

from __future__ import annotations

from typing import Any, ClassVar

from django.core.validators import MaxValueValidator, MinValueValidator
from django.db import models
from django.db.models import F, Q
from django.utils.translation import gettext_lazy as _

from farm.models import Record
from records.models.balances import LotQuerySet
from records.models.crops import Kind

SHARE = [MinValueValidator(0.0), MaxValueValidator(1.0)]


class SeedLot(Record):
    DATE_FIELD = "received_on"
    LASTS = True
    PARTS = ("components", "weeds")

    class Status(models.TextChoices):
        ORGANIC = "organic", _("organic")
        UNTREATED = "untreated", _("not organic, untreated")
        TREATED = "treated", _("treated")

    class Came(models.TextChoices):
        RECEIVED = "received", _("received")
        ON_HAND = "on_hand", _("on hand at the beginning")
        SAVED = "saved", _("saved from our own crop")

    class Shown(models.TextChoices):
        """How it is shown that the seed is not of an engineered variety."""

        WRITTEN = "written", _("written statement")
        TEST = "test", _("test of a sample")

    kind = models.ForeignKey(
        Kind, on_delete=models.PROTECT, related_name="lots", verbose_name=_("kind")
    )
    variety = models.CharField(_("variety"), max_length=80, blank=True)
    supplier = models.CharField(_("supplier"), max_length=120, blank=True)
    lot_number = models.CharField(_("lot number"), max_length=60)
    came = models.CharField(
        _("how it came"), max_length=8, choices=Came.choices, default=Came.RECEIVED
    )
    order = models.ForeignKey(
        "records.SeedOrder",
        on_delete=models.PROTECT,
        related_name="lots",
        null=True,
        blank=True,
        verbose_name=_("from the order"),
    )
    received_on = models.DateField(_("received on"))
    received_kg = models.FloatField(_("weight received"))
    purity_share = models.FloatField(
        _("purity"), null=True, blank=True, validators=SHARE
    )
    germination_share = models.FloatField(
        _("germination"), null=True, blank=True, validators=SHARE
    )
    hard_share = models.FloatField(
        _("hard or dormant seed"), default=0.0, validators=SHARE
    )
    other_crop_share = models.FloatField(
        _("other crop seed"), null=True, blank=True, validators=SHARE
    )
    inert_share = models.FloatField(
        _("inert matter"), null=True, blank=True, validators=SHARE
    )
    weed_share = models.FloatField(
        _("weed seed"), null=True, blank=True, validators=SHARE
    )
    no_noxious = models.BooleanField(_("no noxious weeds, says the tag"), default=False)
    tested_on = models.DateField(_("test month"), null=True, blank=True)
    origin = models.CharField(_("origin"), max_length=80, blank=True)
    status = models.CharField(
        _("status"), max_length=9, choices=Status.choices, default=Status.ORGANIC
    )
    treatment = models.CharField(_("treatment"), max_length=120, blank=True)
    certificate = models.CharField(_("organic certificate"), max_length=120, blank=True)
    non_gmo = models.CharField(
        _("shown not to be engineered, by"),
        max_length=7,
        choices=Shown.choices,
        blank=True,
    )
    non_gmo_on = models.DateField(
        _("date of that statement or test"), null=True, blank=True
    )
    inoculant = models.CharField(_("inoculant on the seed"), max_length=120, blank=True)
    inoculant_until = models.DateField(
        _("inoculant good until the month"), null=True, blank=True
    )

    objects: ClassVar[models.Manager[Any]] = LotQuerySet.as_manager()

    class Meta(Record.Meta):
        verbose_name = _("seed lot")
        verbose_name_plural = _("seed lots")
        constraints = [
            *Record.Meta.constraints,
            models.CheckConstraint(
                condition=Q(received_kg__gt=0), name="lot_has_a_weight"
            ),
            models.CheckConstraint(
                condition=Q(purity_share=None) | Q(purity_share__range=(0, 1)),
                name="lot_purity_is_a_share",
            ),
            models.CheckConstraint(
                condition=Q(germination_share=None)
                | Q(
                    germination_share__gte=0, germination_share__lte=1 - F("hard_share")
                ),
                name="lot_viable_is_a_share",
                violation_error_message=_(
                    "Germination and hard seed together are more than the whole."
                ),
            ),
            models.CheckConstraint(
                condition=Q(non_gmo="", non_gmo_on=None)
                | (~Q(non_gmo="") & Q(non_gmo_on__isnull=False)),
                name="lot_non_gmo_has_its_day",
                violation_error_message=_(
                    "Say both: by what it is shown, and of which day that is."
                ),
            ),
            models.UniqueConstraint(
                "farm",
                "kind",
                "lot_number",
                condition=Q(voided_at=None),
                name="lot_number_once_a_kind",
                violation_error_message=_("This lot is already written down."),
            ),
        ]

    def __str__(self) -> str:
        return f"{self.kind} · {self.lot_number}"

    def holds(self, kind: Kind) -> bool:
        """Whether the lot is of this kind, or a mix with it in."""
        of_mix = (component.kind_id for component in self.components.all())
        return kind.pk == self.kind_id or kind.pk in of_mix

    @property
    def pls_share(self) -> float | None:
        """Pure live seed as the tag gives it, or None where the tag is silent."""
        if self.purity_share is None or self.germination_share is None:
            return None
        return self.purity_share * (self.germination_share + self.hard_share)

    def pls_of(self, kind_id: int) -> float | None:
        """Pure live seed of one kind in the whole lot; None where it is not known."""
        parts = list(self.components.all())
        if not parts:
            return self.pls_share if kind_id == self.kind_id else None
        shares = [part.pls_share for part in parts if part.kind_id == kind_id]
        known = [share for share in shares if share is not None]
        return sum(known) if known and len(known) == len(shares) else None

    def contents(self) -> list[tuple[Kind, float | None]]:
        """Every kind in it, the one it is named by first, with its live seed."""
        kinds = {part.kind_id: part.kind for part in self.components.all()}
        kinds = {self.kind_id: self.kind, **kinds}
        return [(kind, self.pls_of(pk)) for pk, kind in kinds.items()]


class LotComponent(models.Model):
    """One kind of a mix, as the tag names it."""

    lot = models.ForeignKey(
        SeedLot, on_delete=models.CASCADE, related_name="components"
    )
    kind = models.ForeignKey(
        Kind,
        on_delete=models.PROTECT,
        related_name="components",
        verbose_name=_("kind"),
    )
    variety = models.CharField(_("variety"), max_length=80, blank=True)
    pure_share = models.FloatField(_("pure seed by weight"), validators=SHARE)
    germination_share = models.FloatField(
        _("germination"), null=True, blank=True, validators=SHARE
    )
    hard_share = models.FloatField(
        _("hard or dormant seed"), default=0.0, validators=SHARE
    )
    origin = models.CharField(_("origin"), max_length=80, blank=True)

    class Meta:
        verbose_name = _("component of a mix")
        verbose_name_plural = _("components of a mix")
        constraints = [
            models.CheckConstraint(
                condition=Q(pure_share__gt=0, pure_share__lte=1),
                name="component_purity_is_a_share",
            ),
            models.CheckConstraint(
                condition=Q(germination_share=None)
                | Q(
                    germination_share__gte=0, germination_share__lte=1 - F("hard_share")
                ),
                name="component_viable_is_a_share",
            ),
            models.UniqueConstraint(
                "lot", "kind", "variety", name="component_once_a_lot"
            ),
        ]

    def __str__(self) -> str:
        return f"{self.kind} {self.variety}".strip()

    @property
    def pls_share(self) -> float | None:
        """Pure live seed of this kind in the whole mix."""
        if self.germination_share is None:
            return None
        return self.pure_share * (self.germination_share + self.hard_share)


class NoxiousWeed(models.Model):
    """One noxious weed that the tag names, by number in a weight of seed."""

    lot = models.ForeignKey(SeedLot, on_delete=models.CASCADE, related_name="weeds")
    name = models.CharField(_("noxious weed"), max_length=80)
    count_per_kg = models.FloatField(_("number in a weight of seed"))

    class Meta:
        verbose_name = _("noxious weed")
        verbose_name_plural = _("noxious weeds")
        constraints = [
            models.CheckConstraint(
                condition=Q(count_per_kg__gt=0),
                name="noxious_weed_by_number",
                violation_error_message=_("A number is more than nothing."),
            ),
            models.UniqueConstraint("lot", "name", name="noxious_weed_once_a_lot"),
        ]

    def __str__(self) -> str:
        return self.name
