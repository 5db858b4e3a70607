"""From needs and stock to the cheapest order."""

from __future__ import annotations

import datetime as dt
from collections import defaultdict
from collections.abc import Collection, Mapping, Sequence

from reports.calc.order import (
    SECONDS_BESIDE,
    SECONDS_IN_FULL,
    aged_pls,
    cheapest,
    compared,
    drawn,
    trouble_with,
)
from reports.calc.shapes.order import Offer, OnHand, Rule, Terms, Want
from reports.calc.shapes.seed import Buying, LeftOut, Need, OfferFacts

ORGANIC = "organic"


def buying(
    needs: Sequence[Need],
    lots: Sequence[OnHand],
    offers: Sequence[OfferFacts],
    terms: Mapping[int, Terms],
    *,
    assumptions: Mapping[str, float],
    today: dt.date,
    skipped: Collection[int] = (),
    let_go: Collection[Rule] = (),
    in_full: bool = False,
) -> Buying:
    """Return what stock covers and the cheapest order for the rest.

    An offer is in stock when it can be had before the first sowing that stock does not
    cover. Its pure live seed is counted weaker by the age of its test on that day.
    ``skipped`` suppliers are not asked, rules ``let_go`` do not hold. ``in_full`` gives
    the plans beside the cheapest the time to be proved.
    """
    loss = assumptions["seed_loss_a_year"]
    wanted = [_want(need) for need in needs if need.pls_kg]
    draws, wants = drawn(
        wanted,
        lots,
        loss_a_year=loss,
        oldest_years=assumptions["seed_oldest_years"],
    )
    needs_kg, first = _by_kind(wants)
    told = [
        (one, _offer(one, min(first[kind] for kind in held), today, loss))
        for one in offers
        if (held := needs_kg.keys() & {one.kind, *(kind for kind, _ in one.also)})
    ]
    left_out = _left_out(told)
    out = {row.offer.id for row in left_out}
    usable = [offer for facts, offer in told if facts.id not in out]
    asked = [offer for offer in usable if offer.supplier not in skipped]
    blends = _blends(wants)
    is_overruled = let_go or len(asked) < len(usable)
    beside = SECONDS_IN_FULL if in_full else SECONDS_BESIDE
    return Buying(
        needs=tuple(needs),
        unknown=tuple(need for need in needs if need.pls_kg is None),
        draws=draws,
        wants=wants,
        needs_kg=needs_kg,
        left_out=tuple(left_out),
        comparison=compared(
            needs_kg,
            asked,
            terms,
            without=let_go,
            blends=blends,
            seconds_beside=beside,
        ),
        plain=cheapest(needs_kg, usable, terms, blends=blends)
        if is_overruled
        else None,
    )


def _left_out(told: Sequence[tuple[OfferFacts, Offer]]) -> list[LeftOut]:
    return [
        LeftOut(facts, trouble_with(offer))
        for facts, offer in told
        if trouble_with(offer) or not facts.is_allowed
    ]


def _want(need: Need) -> Want:
    planned = need.planned
    return Want(planned.id, need.kind.slug, planned.on, need.pls_kg or 0.0)


def _by_kind(wants: Sequence[Want]) -> tuple[dict[str, float], dict[str, dt.date]]:
    needs: defaultdict[str, float] = defaultdict(float)
    first: dict[str, dt.date] = {}
    for want in wants:
        needs[want.kind] += want.pls_kg
        first[want.kind] = min(want.on, first.get(want.kind, want.on))
    return dict(needs), first


def _blends(wants: Sequence[Want]) -> tuple[Mapping[str, float], ...]:
    """Return the needs of each planting of several kinds."""
    plantings: defaultdict[int, dict[str, float]] = defaultdict(dict)
    for want in wants:
        plantings[want.planting][want.kind] = want.pls_kg
    return tuple(kinds for kinds in plantings.values() if len(kinds) > 1)


def _offer(facts: OfferFacts, on: dt.date, today: dt.date, loss: float) -> Offer:
    def alive(pls: float | None) -> float:
        if not pls or facts.tested_on is None:
            return pls or 0.0
        return aged_pls(pls=pls, tested_on=facts.tested_on, on=on, loss_a_year=loss)

    ends_first = facts.last is not None and facts.last < today
    comes_late = facts.first is not None and facts.first > on
    return Offer(
        id=facts.id,
        supplier=facts.supplier,
        kind=facts.kind,
        organic=facts.status == ORGANIC,
        pls=alive(facts.pls),
        also=tuple((kind, alive(pls)) for kind, pls in facts.also),
        prices=facts.prices,
        most_kg=facts.most_kg,
        in_stock=not (ends_first or comes_late),
    )
