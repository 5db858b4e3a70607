"""What suppliers offer: a kind, its tag figures, its bags and their prices."""

from __future__ import annotations

from typing import Any, ClassVar

from django.db import models
from django.db.models import F, Q
from django.utils.translation import gettext_lazy as _

from farm.models import Record, RecordQuerySet
from records.models.crops import Kind
from records.models.seeds import SHARE, SeedLot
from records.models.trade import Supplier


class SeedOffer(Record):
    DATE_FIELD = "offered_on"
    PARTS = ("prices", "components")

    supplier = models.ForeignKey(
        Supplier,
        on_delete=models.PROTECT,
        related_name="offers",
        verbose_name=_("supplier"),
    )
    kind = models.ForeignKey(
        Kind, on_delete=models.PROTECT, related_name="offers", verbose_name=_("kind")
    )
    variety = models.CharField(_("variety"), max_length=80, blank=True)
    offered_on = models.DateField(_("day of the price list"))
    status = models.CharField(
        _("status"),
        max_length=9,
        choices=SeedLot.Status.choices,
        default=SeedLot.Status.ORGANIC,
    )
    treatment = models.CharField(_("treatment"), max_length=120, blank=True)
    purity_share = models.FloatField(
        _("purity"), null=True, blank=True, validators=SHARE
    )
    germination_share = models.FloatField(
        _("germination"), null=True, blank=True, validators=SHARE
    )
    hard_share = models.FloatField(
        _("hard or dormant seed"), default=0.0, validators=SHARE
    )
    tested_on = models.DateField(_("test month"), null=True, blank=True)
    in_stock_from = models.DateField(_("in stock from"), null=True, blank=True)
    in_stock_until = models.DateField(_("in stock until"), null=True, blank=True)
    stock_kg = models.FloatField(_("no more in stock than"), null=True, blank=True)

    objects: ClassVar[models.Manager[Any]] = RecordQuerySet.as_manager()

    class Meta(Record.Meta):
        verbose_name = _("seed offer")
        verbose_name_plural = _("seed offers")
        constraints = [
            *Record.Meta.constraints,
            models.CheckConstraint(
                condition=Q(purity_share=None)
                | Q(purity_share__gt=0, purity_share__lte=1),
                name="offer_purity_is_a_share",
                violation_error_message=_("Purity lies above 0 and up to 100 %%."),
            ),
            models.CheckConstraint(
                condition=Q(germination_share=None)
                | Q(
                    germination_share__gte=0, germination_share__lte=1 - F("hard_share")
                ),
                name="offer_viable_is_a_share",
                violation_error_message=_(
                    "Germination and hard seed together pass 100 %%."
                ),
            ),
            models.CheckConstraint(
                condition=Q(stock_kg=None) | Q(stock_kg__gt=0),
                name="offer_stock_above_zero",
                violation_error_message=_("A stock is more than nothing."),
            ),
            models.CheckConstraint(
                condition=Q(in_stock_from=None)
                | Q(in_stock_until=None)
                | Q(in_stock_until__gte=F("in_stock_from")),
                name="offer_ends_after_it_begins",
                violation_error_message=_("The last day in stock is before the first."),
            ),
        ]

    def __str__(self) -> str:
        return " · ".join(
            filter(None, [str(self.kind), self.variety, str(self.supplier)])
        )

    @property
    def pls_share(self) -> float | None:
        """Pure live seed as it is offered, or None where a figure is missing."""
        if self.purity_share is None or self.germination_share is None:
            return None
        return self.purity_share * (self.germination_share + self.hard_share)

    def contents(self) -> list[tuple[Kind, float | None]]:
        """Every kind in it, the one it is named by first, with its live seed."""
        parts = list(self.components.all())
        if not parts:
            return [(self.kind, self.pls_share)]
        kinds = {self.kind_id: self.kind, **{one.kind_id: one.kind for one in parts}}
        shares: dict[int, list[float | None]] = {pk: [] for pk in kinds}
        for one in parts:
            shares[one.kind_id].append(one.pls_share)
        return [
            (kind, None if None in shares[pk] else sum(filter(None, shares[pk])))
            for pk, kind in kinds.items()
        ]


class OfferPrice(models.Model):
    offer = models.ForeignKey(
        SeedOffer, on_delete=models.CASCADE, related_name="prices"
    )
    bag_kg = models.FloatField(_("weight of a bag"))
    from_bags = models.PositiveIntegerField(_("from so many bags on"), default=1)
    price = models.FloatField(_("price of a bag"))

    class Meta:
        verbose_name = _("price")
        verbose_name_plural = _("prices")
        constraints = [
            models.CheckConstraint(
                condition=Q(bag_kg__gt=0, from_bags__gte=1, price__gte=0),
                name="price_is_of_a_bag",
                violation_error_message=_(
                    "A bag has a weight, and a price of nothing or more."
                ),
            ),
            models.UniqueConstraint(
                "offer", "bag_kg", "from_bags", name="price_once_a_break"
            ),
        ]

    def __str__(self) -> str:
        return f"{self.offer} · {self.from_bags}"


class OfferComponent(models.Model):
    """One kind of a mix that is offered, as the price list names it."""

    offer = models.ForeignKey(
        SeedOffer, on_delete=models.CASCADE, related_name="components"
    )
    kind = models.ForeignKey(
        Kind,
        on_delete=models.PROTECT,
        related_name="offer_components",
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

    class Meta:
        verbose_name = _("component of a mix offered")
        verbose_name_plural = _("components of mixes offered")
        constraints = [
            models.CheckConstraint(
                condition=Q(pure_share__gt=0, pure_share__lte=1),
                name="offer_component_is_a_share",
            ),
            models.CheckConstraint(
                condition=Q(germination_share=None)
                | Q(
                    germination_share__gte=0, germination_share__lte=1 - F("hard_share")
                ),
                name="offer_component_viable_is_a_share",
            ),
            models.UniqueConstraint(
                "offer", "kind", "variety", name="offer_component_once"
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
