"""Seed planned, on hand and offered, in a fixed number of queries."""

from __future__ import annotations

import datetime as dt
from collections import defaultdict
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from farm.models import Farm
from records.models import OfferPrice, Planting, SeedLine, SeedLot, SeedOffer, Supplier
from records.searching import days_searched, has_search
from reports.calc.assumptions import Assumptions
from reports.calc.shapes.ledger import Method
from reports.calc.shapes.order import OnHand, Price, Terms
from reports.calc.shapes.seed import OfferFacts, Planned, PlannedLine
from reports.ledger.assumptions import own_assumptions
from reports.ledger.figures import kind_facts
from reports.ledger.mixes import live_shares
from reports.ledger.treated import approved_names, are_approved


@dataclass(frozen=True)
class LotOnHand:
    """A lot with what is left of it, and how a page names it."""

    stock: OnHand
    label: str
    kind_name: str
    status: str
    inoculant: str = ""
    inoculant_until: dt.date | None = None
    is_searched: bool = True
    # The order that it is still to come of.
    order: int | None = None


@dataclass(frozen=True)
class SeedLedger:
    """All that an order is worked out from."""

    planned: tuple[Planned, ...]
    lots: Mapping[int, LotOnHand]
    offers: tuple[OfferFacts, ...]
    terms: Mapping[int, Terms]
    suppliers: Mapping[int, str]
    kind_ids: Mapping[str, int]
    assumptions: Assumptions


def seed_ledger(
    farm: Farm, first: dt.date, last: dt.date, *, by: dt.date
) -> SeedLedger:
    """Plantings planned in a period, lots with seed left, and offers made by a day."""
    rows = _planned_rows(farm, first, last)
    lines = _lines([row["pk"] for row in rows])
    kinds = kind_facts(
        farm, {one["kind_id"] for told in lines.values() for one in told}
    )
    suppliers = Supplier.objects.on(farm).live()
    return SeedLedger(
        planned=tuple(_planned(row, lines[row["pk"]], kinds) for row in rows),
        lots={lot.stock.lot: lot for lot in lots_on_hand(farm)},
        offers=offers_of(farm, by=by),
        terms={row.pk: _terms(row) for row in suppliers},
        suppliers={row.pk: row.name for row in suppliers},
        kind_ids={facts.slug: pk for pk, facts in kinds.items()},
        assumptions=own_assumptions(farm),
    )


def supplier_names(farm: Farm) -> dict[int, str]:
    """Suppliers that offer seed, by number."""
    rows = Supplier.objects.on(farm).live().filter(offers__voided_at=None)
    named = rows.exclude(offers=None).order_by("name").distinct()
    return dict(named.values_list("pk", "name"))


def _planned_rows(farm: Farm, first: dt.date, last: dt.date) -> list[dict[str, Any]]:
    rows = Planting.objects.on(farm).live()
    rows = rows.filter(sown_on=None, planned_on__range=(first, last))
    told: Any = rows.order_by("planned_on", "field__name", "pk").values(
        "pk", "field_id", "field__name", "planned_on", "area_m2", "method"
    )
    return list(told)


def _lines(ids: list[int]) -> Mapping[int, list[dict[str, Any]]]:
    found: defaultdict[int, list[dict[str, Any]]] = defaultdict(list)
    told = SeedLine.objects.filter(planting__in=ids).select_related("lot__kind")
    rows = list(told.prefetch_related("lot__components").order_by("pk"))
    shares = live_shares(
        [(row.planting_id, row.kind_id, row.lot, row.seed_kg) for row in rows]
    )
    for row, pls in zip(rows, shares, strict=True):
        found[row.planting_id].append(
            {
                "kind_id": row.kind_id,
                "share": row.share,
                "seed_kg": row.seed_kg,
                "lot_pls": pls,
            }
        )
    return found


def _planned(row: Mapping[str, Any], lines: Any, kinds: Any) -> Planned:
    return Planned(
        id=row["pk"],
        field_id=row["field_id"],
        field_name=row["field__name"],
        on=row["planned_on"],
        area_m2=row["area_m2"],
        method=Method(row["method"]),
        lines=tuple(
            PlannedLine(
                kinds[line["kind_id"]], line["share"], line["seed_kg"], line["lot_pls"]
            )
            for line in lines
        ),
    )


def lots_on_hand(farm: Farm) -> list[LotOnHand]:
    """Lots with seed left, the oldest test first; five queries."""
    searched = days_searched(farm)
    rows = SeedLot.objects.on(farm).live().with_balance().filter(left_kg__gt=0)
    rows = rows.select_related("kind").prefetch_related("components__kind")
    return [
        _on_hand(row, has_search(row, searched))
        for row in rows.order_by("tested_on", "pk")
    ]


def _on_hand(row: Any, is_searched: bool) -> LotOnHand:
    (kind, pls), *more = row.contents()
    return LotOnHand(
        OnHand(
            lot=row.pk,
            kind=kind.slug,
            left_kg=row.left_kg,
            pls=pls,
            tested_on=row.tested_on,
            organic=row.status == SeedLot.Status.ORGANIC,
            also=tuple((other.slug, share) for other, share in more),
        ),
        label=row.lot_number,
        kind_name=" + ".join(str(one) for one in (kind, *(other for other, _ in more))),
        status=row.get_status_display(),
        inoculant=row.inoculant,
        inoculant_until=row.inoculant_until,
        is_searched=is_searched,
    )


def offers_of(farm: Farm, *, by: dt.date) -> tuple[OfferFacts, ...]:
    """Every live offer written by a day, with its table of prices; four queries."""
    rows = SeedOffer.objects.on(farm).live().filter(offered_on__lte=by)
    rows = rows.select_related("supplier", "kind").prefetch_related("components__kind")
    approved = approved_names(farm, by=by)
    prices: defaultdict[int, list[Price]] = defaultdict(list)
    told = OfferPrice.objects.filter(offer__farm=farm, offer__voided_at=None)
    for one in told.order_by("bag_kg", "from_bags", "pk"):
        prices[one.offer_id].append(Price(one.bag_kg, one.from_bags, one.price))
    rows = rows.order_by("pk")
    return tuple(_offer(row, tuple(prices[row.pk]), farm, approved) for row in rows)


def _offer(
    row: SeedOffer, prices: tuple[Price, ...], farm: Farm, approved: frozenset[str]
) -> OfferFacts:
    (kind, pls), *more = row.contents()
    is_treated = row.status == SeedLot.Status.TREATED
    return OfferFacts(
        id=row.pk,
        supplier=row.supplier_id,
        supplier_name=row.supplier.name,
        kind=kind.slug,
        kind_id=row.kind_id,
        kind_name=" + ".join(str(one) for one in (kind, *(other for other, _ in more))),
        variety=row.variety,
        status=row.status,
        pls=pls,
        tested_on=row.tested_on,
        first=row.in_stock_from,
        last=row.in_stock_until,
        most_kg=row.stock_kg,
        prices=prices,
        also=tuple((other.slug, share) for other, share in more),
        treatment=row.treatment,
        is_allowed=not is_treated
        or farm.standard == Farm.Standard.NONE
        or are_approved(row.treatment, approved),
    )


def _terms(row: Supplier) -> Terms:
    return Terms(
        supplier=row.pk,
        freight_order=row.freight or 0.0,
        freight_kg=row.freight_by_weight or 0.0,
        least_order=row.least_order or 0.0,
    )
