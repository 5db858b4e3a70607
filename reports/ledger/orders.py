"""One order with its lines and the lots that came of it, in ten queries."""

from __future__ import annotations

from collections.abc import Sequence
from operator import attrgetter
from typing import Any

from django.http import Http404

from farm.models import Farm
from records.models import Kind, OrderDressing, OrderLine, SeedLot, SeedOrder
from reports.calc.shapes.receipt import (
    CameLot,
    Content,
    OrderedLine,
    OrderedPackets,
    OrderFacts,
)
from reports.ledger.dossier.kinds import flags_of

BESIDE = (
    "lines__kind",
    "components__kind",
    "dressings__product",
    "lots__kind",
    "lots__components__kind",
)
Held = Sequence[tuple[Kind, float | None]]


def order_facts(farm: Farm, pk: int) -> OrderFacts:
    """A live order of the farm; another's is not found."""
    order = orders_of(farm).filter(pk=pk).first()
    if order is None:
        raise Http404
    return facts_of(order, engineered=flags_of(farm)["engineered_sold"])


def orders_of(farm: Farm) -> Any:
    """Live orders of a farm with all that facts are made of."""
    rows = SeedOrder.objects.on(farm).live().select_related("supplier")
    return rows.prefetch_related(*BESIDE).order_by("pk")


def facts_of(
    order: SeedOrder, *, engineered: frozenset[int] = frozenset()
) -> OrderFacts:
    """What a fetched order says; of kinds sold engineered too, what shows the seed."""
    lots = sorted(order.lots.all(), key=attrgetter("pk"))
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
        lines=tuple(_line(line, held) for line, held in order.told_lines()),
        lots=tuple(_lot(lot, engineered) for lot in lots if lot.voided_at is None),
        overruled=order.overruled,
        packets=tuple(
            _packets(one) for one in sorted(order.dressings.all(), key=attrgetter("pk"))
        ),
    )


def _line(row: OrderLine, held: Held) -> OrderedLine:
    return OrderedLine(
        kind=row.kind.slug,
        kind_id=row.kind_id,
        kind_name=_named(held),
        variety=row.variety,
        status=row.status,
        bag_kg=row.bag_kg,
        bags=row.bags,
        price=row.price,
        pls=row.pls_share,
        contents=_contents(held),
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


def _lot(row: SeedLot, engineered: frozenset[int]) -> CameLot:
    held = row.contents()
    asked = row.status != SeedLot.Status.ORGANIC and not row.non_gmo
    return CameLot(
        id=row.pk,
        label=row.lot_number,
        kind=row.kind.slug,
        kind_name=_named(held),
        variety=row.variety,
        status=row.status,
        received_kg=row.received_kg,
        pls=row.pls_share,
        contents=_contents(held),
        unshown=asked and any(kind.pk in engineered for kind, _pls in held),
    )


def _named(held: Held) -> str:
    return " + ".join(str(kind) for kind, _pls in held)


def _contents(held: Held) -> tuple[Content, ...]:
    return tuple(Content(kind.slug, str(kind), pls, kind.pk) for kind, pls in held)
