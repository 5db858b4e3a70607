"""From needs and stock to the cheapest order."""

from __future__ import annotations

import datetime as dt
from collections import defaultdict
from collections.abc import Mapping, Sequence

from reports.calc.order import aged_pls, compared, drawn, trouble_with
from reports.calc.shapes.order import Offer, OnHand, Terms, Want
from reports.calc.shapes.seed import Buying, LeftOut, Need, OfferFacts

ORGANIC, TREATED = "organic", "treated"


def buying(
    needs: Sequence[Need],
    lots: Sequence[OnHand],
    offers: Sequence[OfferFacts],
    terms: Mapping[int, Terms],
    *,
    assumptions: Mapping[str, float],
    today: dt.date,
    takes_treated: bool = False,
) -> Buying:
    """Return what stock covers and the cheapest order for the rest.

    An offer is in stock when it can be had before the first sowing that stock does not
    cover. Its pure live seed is counted weaker by the age of its test on that day.
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
    fit = [one for one in offers if one.kind in needs_kg]
    told = [(one, _offer(one, first[one.kind], today, loss)) for one in fit]
    left_out = [
        LeftOut(facts, trouble_with(offer))
        for facts, offer in told
        if trouble_with(offer) or (facts.status == TREATED and not takes_treated)
    ]
    out = {row.offer.id for row in left_out}
    usable = [offer for facts, offer in told if facts.id not in out]
    return Buying(
        needs=tuple(needs),
        unknown=tuple(need for need in needs if need.pls_kg is None),
        draws=draws,
        wants=wants,
        needs_kg=needs_kg,
        left_out=tuple(left_out),
        comparison=compared(needs_kg, usable, terms),
    )


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


def _offer(facts: OfferFacts, on: dt.date, today: dt.date, loss: float) -> Offer:
    pls = facts.pls or 0.0
    if pls and facts.tested_on:
        pls = aged_pls(pls=pls, tested_on=facts.tested_on, on=on, loss_a_year=loss)
    ends_first = facts.last is not None and facts.last < today
    comes_late = facts.first is not None and facts.first > on
    return Offer(
        id=facts.id,
        supplier=facts.supplier,
        kind=facts.kind,
        organic=facts.status == ORGANIC,
        pls=pls,
        prices=facts.prices,
        most_kg=facts.most_kg,
        in_stock=not (ends_first or comes_late),
    )
