"""Seed ordered: from whom, which bags, at what price."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Mapping
from operator import attrgetter
from typing import Any, ClassVar

from django.db import models
from django.db.models import F, Q
from django.utils.translation import gettext_lazy as _

from farm.models import Record, RecordQuerySet
from records.models.crops import Kind
from records.models.inputs import InputProduct
from records.models.seeds import SHARE, SeedLot
from records.models.trade import Supplier


class SeedOrder(Record):
    DATE_FIELD = "drawn_up_on"
    PARTS = ("lines", "dressings", "components")

    supplier = models.ForeignKey(
        Supplier,
        on_delete=models.PROTECT,
        related_name="orders",
        verbose_name=_("supplier"),
    )
    drawn_up_on = models.DateField(_("drawn up on"))
    wanted_by = models.DateField(_("wanted by"), null=True, blank=True)
    sent_on = models.DateField(_("sent on"), null=True, blank=True)
    reference = models.CharField(_("order number"), max_length=60, blank=True)
    freight = models.FloatField(_("freight"), null=True, blank=True)
    # For the farm's own books: it does not go to the supplier.
    overruled = models.CharField(
        _("what was overruled, and why"), max_length=600, blank=True
    )

    objects: ClassVar[models.Manager[Any]] = RecordQuerySet.as_manager()

    class Meta(Record.Meta):
        verbose_name = _("seed order")
        verbose_name_plural = _("seed orders")
        constraints = [
            *Record.Meta.constraints,
            models.CheckConstraint(
                condition=Q(freight=None) | Q(freight__gte=0),
                name="order_freight_not_below_zero",
                violation_error_message=_("Freight is nothing or more."),
            ),
            models.CheckConstraint(
                condition=Q(sent_on=None) | Q(sent_on__gte=F("drawn_up_on")),
                name="order_sent_after_drawn_up",
                violation_error_message=_("It was sent before it was drawn up."),
            ),
        ]

    def __str__(self) -> str:
        return " · ".join(
            filter(None, [str(self.supplier), self.reference, str(self.drawn_up_on)])
        )

    def told_lines(self) -> list[tuple[OrderLine, list[tuple[Kind, float | None]]]]:
        """Every line with the kinds in it, the one it is named by first."""
        mixed: defaultdict[int, dict[Kind, float | None]] = defaultdict(dict)
        for one in sorted(self.components.all(), key=attrgetter("pk")):
            mixed[one.line][one.kind] = one.pls_share
        lines = sorted(self.lines.all(), key=attrgetter("pk"))
        return [
            (line, list(_with_first(line, mixed[place])))
            for place, line in enumerate(lines, start=1)
        ]


def _with_first(
    line: OrderLine, mixed: Mapping[Kind, float | None]
) -> Iterator[tuple[Kind, float | None]]:
    yield line.kind, mixed.get(line.kind, line.pls_share)
    yield from ((kind, pls) for kind, pls in mixed.items() if kind != line.kind)


class OrderLine(models.Model):
    order = models.ForeignKey(SeedOrder, on_delete=models.CASCADE, related_name="lines")
    kind = models.ForeignKey(
        Kind,
        on_delete=models.PROTECT,
        related_name="order_lines",
        verbose_name=_("kind"),
    )
    variety = models.CharField(_("variety"), max_length=80, blank=True)
    status = models.CharField(
        _("status"),
        max_length=9,
        choices=SeedLot.Status.choices,
        default=SeedLot.Status.ORGANIC,
    )
    bag_kg = models.FloatField(_("weight of a bag"))
    bags = models.PositiveIntegerField(_("bags"))
    price = models.FloatField(_("price of a bag"), null=True, blank=True)
    pls_share = models.FloatField(
        _("pure live seed offered"), null=True, blank=True, validators=SHARE
    )

    class Meta:
        verbose_name = _("order line")
        verbose_name_plural = _("order lines")
        constraints = [
            models.CheckConstraint(
                condition=Q(bag_kg__gt=0, bags__gte=1), name="line_is_of_whole_bags"
            ),
            models.CheckConstraint(
                condition=Q(price=None) | Q(price__gte=0),
                name="line_price_not_below_zero",
            ),
            models.CheckConstraint(
                condition=Q(pls_share=None) | Q(pls_share__gt=0, pls_share__lte=1),
                name="line_live_seed_is_a_share",
            ),
        ]

    def __str__(self) -> str:
        return f"{self.kind} {self.variety}".strip()

    @property
    def seed_kg(self) -> float:
        """All the bags of the line."""
        return self.bag_kg * self.bags


class OrderDressing(models.Model):
    """Inoculant or treatment ordered for the seed: how much, in which packets."""

    order = models.ForeignKey(
        SeedOrder, on_delete=models.CASCADE, related_name="dressings"
    )
    product = models.ForeignKey(
        InputProduct,
        on_delete=models.PROTECT,
        related_name="order_dressings",
        verbose_name=_("inoculant or treatment"),
    )
    for_seed = models.CharField(_("for seed of"), max_length=200, blank=True)
    needed_kg = models.FloatField(_("amount needed"))
    packet_kg = models.FloatField(_("weight of a packet"), null=True, blank=True)
    packets = models.PositiveIntegerField(_("packets"), null=True, blank=True)
    price = models.FloatField(_("price of a packet"), null=True, blank=True)

    class Meta:
        verbose_name = _("inoculant or treatment ordered")
        verbose_name_plural = _("inoculants and treatments ordered")
        constraints = [
            models.CheckConstraint(
                condition=Q(needed_kg__gt=0)
                & (Q(packet_kg=None) | Q(packet_kg__gt=0))
                & (Q(packets=None) | Q(packets__gte=1)),
                name="dressing_ordered_by_amount",
            ),
            models.CheckConstraint(
                condition=Q(price=None) | Q(price__gte=0),
                name="dressing_price_not_below_zero",
            ),
        ]

    def __str__(self) -> str:
        return str(self.product)


class OrderComponent(models.Model):
    """One kind of a mix ordered, as it was offered: in which line, and how alive."""

    order = models.ForeignKey(
        SeedOrder, on_delete=models.CASCADE, related_name="components"
    )
    line = models.PositiveSmallIntegerField(_("line of the order"))
    kind = models.ForeignKey(
        Kind,
        on_delete=models.PROTECT,
        related_name="order_components",
        verbose_name=_("kind"),
    )
    pls_share = models.FloatField(
        _("pure live seed in the whole"), null=True, blank=True, validators=SHARE
    )

    class Meta:
        verbose_name = _("component of a mix ordered")
        verbose_name_plural = _("components of mixes ordered")
        constraints = [
            models.CheckConstraint(
                condition=Q(line__gte=1), name="component_of_a_line_ordered"
            ),
            models.CheckConstraint(
                condition=Q(pls_share=None) | Q(pls_share__gt=0, pls_share__lte=1),
                name="component_ordered_is_a_share",
            ),
            models.UniqueConstraint(
                "order", "line", "kind", name="component_ordered_once_a_line"
            ),
        ]

    def __str__(self) -> str:
        return str(self.kind)
