"""One order with its lines and the lots that came of it: four queries."""

from __future__ import annotations

from django.http import Http404

from farm.models import Farm
from records.models import OrderDressing, OrderLine, SeedLot, SeedOrder
from reports.calc.shapes.receipt import (
    CameLot,
    OrderedLine,
    OrderedPackets,
    OrderFacts,
)


def order_facts(farm: Farm, pk: int) -> OrderFacts:
    """A live order of the farm; another's is not found."""
    rows = SeedOrder.objects.on(farm).live().select_related("supplier")
    order = rows.filter(pk=pk).first()
    if order is None:
        raise Http404
    lines = order.lines.select_related("kind").order_by("pk")
    onto = order.dressings.select_related("product")
    lots = order.lots.filter(voided_at=None).select_related("kind").order_by("pk")
    return OrderFacts(
        id=order.pk,
        supplier=order.supplier.name,
        address=order.supplier.address,
        reference=order.reference,
        drawn_up_on=order.drawn_up_on,
        wanted_by=order.wanted_by,
        sent_on=order.sent_on,
        freight=order.freight,
        notes=order.notes,
        lines=tuple(_line(line) for line in lines),
        lots=tuple(_lot(lot) for lot in lots),
        overruled=order.overruled,
        packets=tuple(_packets(one) for one in onto.order_by("pk")),
    )


def _line(row: OrderLine) -> OrderedLine:
    return OrderedLine(
        kind=row.kind.slug,
        kind_id=row.kind_id,
        kind_name=str(row.kind),
        variety=row.variety,
        status=row.status,
        bag_kg=row.bag_kg,
        bags=row.bags,
        price=row.price,
        pls=row.pls_share,
    )


def _packets(row: OrderDressing) -> OrderedPackets:
    return OrderedPackets(
        product=str(row.product),
        for_seed=row.for_seed,
        needed_kg=row.needed_kg,
        packet_kg=row.packet_kg,
        packets=row.packets,
        price=row.price,
    )


def _lot(row: SeedLot) -> CameLot:
    return CameLot(
        id=row.pk,
        label=row.lot_number,
        kind=row.kind.slug,
        kind_name=str(row.kind),
        variety=row.variety,
        status=row.status,
        received_kg=row.received_kg,
        pls=row.pls_share,
    )
