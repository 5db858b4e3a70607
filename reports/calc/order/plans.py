"""The cheapest plan, the next best, and what every rule costs."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from dataclasses import replace

from reports.calc.order.model import NO_TERMS, Model, Tier, model_of
from reports.calc.order.solving import SECONDS, Solved, solve
from reports.calc.shapes.order import (
    Bought,
    Comparison,
    Offer,
    Outcome,
    Parcel,
    Plan,
    Rule,
    RuleCost,
    Terms,
)

Blends = Sequence[Mapping[str, float]]
NOTHING = Plan(Outcome.NOTHING_NEEDED, (), 0.0, {}, {})
# Shares of a need below this are rounding.
NONE_SHORT = 1e-6
# Plans that only stand beside the cheapest may be the best found by then: short
# enough for a page, or long enough to prove most of them.
SECONDS_BESIDE = 0.4
SECONDS_IN_FULL = 6.0


def cheapest(
    needs_kg: Mapping[str, float],
    offers: Sequence[Offer],
    terms: Mapping[int, Terms],
    *,
    without: Collection[Rule] = (),
    blends: Blends = (),
    seconds: float = SECONDS,
    near: Plan | None = None,
) -> Plan:
    """Return the cheapest order of whole bags that covers every kind.

    Parameters
    ----------
    needs_kg : mapping of str to float
        Pure live seed needed by kind. [kg] 0 or more.
    offers : sequence of Offer
        What can be had; those with a trouble of their own are left out.
    terms : mapping of int to Terms
        Freight and least order by supplier; none where a supplier is not named.
    without : collection of Rule
        Rules let go.
    blends : sequence of mapping of str to float
        Of the needs, those of each planting of several kinds. [kg] A mix is bought
        for plantings that want all of its kinds.
    seconds : float
        After this the best found so far is returned, with its bound. [s] Above 0.
    near : Plan, optional
        A plan that these rules allow, to begin from.

    Returns
    -------
    Plan
        Proven cheapest to half a cent where its outcome says so. What cannot be
        covered is told by kind and the rest is still bought.

    Raises
    ------
    ValueError
        If a need is below 0.

    Notes
    -----
    Three questions, each kept in the next: the least that is left uncovered, the least
    that organic offers leave uncovered, and the least money. Solved over whole numbers
    by branch and cut ([HIGHS]_).

    Examples
    --------
    >>> from reports.calc.shapes.order import Price
    >>> bag = Price(bag_kg=20.0, from_bags=1, each=30.0)
    >>> plan = cheapest({"oats": 50.0}, [Offer(1, 7, "oats", True, 0.9, (bag,))], {})
    >>> plan.outcome.value, plan.cost, plan.parcels[0].lines[0].bags
    ('cheapest', 90.0, 3.0)
    """
    if any(need_kg < 0 for need_kg in needs_kg.values()):
        raise ValueError("a need below 0")
    if not any(needs_kg.values()):
        return NOTHING
    model = model_of(needs_kg, offers, terms, without=without, blends=blends)
    _hold(model, model.short, _is_plain(model, needs_kg, terms), seconds)
    organic = _is_plain(model, needs_kg, terms, organic=True)
    _hold(model, model.not_organic, organic, seconds)
    solved = _least_cost(model, seconds, _start(model, near) if near else None)
    assert solved is not None
    return _plan(model, solved, needs_kg, terms)


def compared(
    needs_kg: Mapping[str, float],
    offers: Sequence[Offer],
    terms: Mapping[int, Terms],
    *,
    without: Collection[Rule] = (),
    blends: Blends = (),
    seconds: float = SECONDS,
    seconds_beside: float = SECONDS_BESIDE,
) -> Comparison:
    """Return the cheapest order, the next best without one of its suppliers, and rules.

    Parameters
    ----------
    needs_kg, offers, terms, without, blends, seconds
        As :func:`cheapest` takes them.
    seconds_beside : float
        As ``seconds``, for each plan that stands beside the cheapest. [s] Above 0.

    Returns
    -------
    Comparison
        ``other`` is None where every supplier is needed. A rule's saving is None where
        the plan that it is measured from is not covered.

    Examples
    --------
    >>> compared({}, [], {}).best.outcome.value
    'nothing_needed'
    """
    best = cheapest(
        needs_kg, offers, terms, without=without, blends=blends, seconds=seconds
    )
    if not best.parcels:
        return Comparison(best, None, ())
    plans = {
        rule: cheapest(
            needs_kg,
            offers,
            terms,
            without={rule, *without},
            blends=blends,
            seconds=seconds_beside,
            near=best,
        )
        for rule in Rule
        if rule not in without and _binds(rule, offers, terms)
    }
    model = model_of(needs_kg, offers, terms, without=without, blends=blends)
    other = _other(best, model, needs_kg, terms, seconds_beside)
    rules = [_rule_cost(rule, best, plan) for rule, plan in plans.items()]
    return Comparison(best, other, tuple(rules))


def _start(model: Model, plan: Plan) -> dict[int, float]:
    """Return the whole columns of a model as a plan has them."""
    bags = {
        (line.offer.id, line.price): line.bags
        for parcel in plan.parcels
        for line in parcel.lines
    }
    start = {at: float(one in plan.suppliers) for one, at in model.suppliers.items()}
    for tier in model.tiers:
        many = bags.get((tier.offer.id, tier.price), 0.0)
        start |= {tier.bags: many, tier.taken: float(many > 0)}
    return start


def _is_plain(
    model: Model,
    needs_kg: Mapping[str, float],
    terms: Mapping[int, Terms],
    *,
    organic: bool = False,
) -> set[str]:
    """Return the kinds that one offer without an end to it covers for certain."""
    return {
        tier.offer.kind
        for tier in model.tiers
        if tier.offer.most_kg is None
        and not tier.offer.also
        and (tier.offer.organic or not organic)
        and (tier.price.each > 0 or not _least(tier, terms))
    }


def _least(tier: Tier, terms: Mapping[int, Terms]) -> float:
    return terms.get(tier.offer.supplier, NO_TERMS).least_order


def _hold(
    model: Model, short: Mapping[str, int], plain: set[str], seconds: float
) -> None:
    """Find the least that must stay short, and hold the model to it."""
    asked = [column for kind, column in short.items() if kind not in plain]
    for kind in plain & set(short):
        model.columns[short[kind]].high = 0.0
    if not asked:
        return
    costs = [0.0] * len(model.columns)
    for column in asked:
        costs[column] = 1e6  # Well above the solver's half a cent.
    solved = solve(model, costs=costs, seconds=seconds)
    assert solved is not None
    for column in asked:
        left = solved[column]
        model.columns[column].high = min(1.0, left + 1e-8) if left > NONE_SHORT else 0.0


def _least_cost(
    model: Model, seconds: float, start: Mapping[int, float] | None = None
) -> Solved | None:
    """Solve for money; where organic offers cover a kind, no other is looked at."""
    left = {kind: model.columns[at].high for kind, at in model.not_organic.items()}
    covered = {kind for kind, share in left.items() if not share}
    others = [
        model.columns[tier.taken]
        for tier in model.tiers
        if not tier.offer.organic
        and all(kind in covered for kind, _ in tier.offer.contents)
    ]
    for column in others:
        column.high = 0.0
    solved = solve(model, seconds=seconds, start=start)
    if solved is None:
        # An organic offer may come with a least order that only others fill.
        for column in others:
            column.high = 1.0
        solved = solve(model, seconds=seconds)
    return solved


def _plan(
    model: Model,
    solved: Solved,
    needs_kg: Mapping[str, float],
    terms: Mapping[int, Terms],
) -> Plan:
    lines: dict[int, list[Bought]] = {}
    for tier in model.tiers:
        if solved[tier.bags] > NONE_SHORT:
            line = Bought(tier.offer, tier.price, solved[tier.bags])
            lines.setdefault(tier.offer.supplier, []).append(line)
    short = _left(model, model.short, needs_kg)
    plan = Plan(
        outcome=Outcome.NOT_COVERED if short else Outcome.CHEAPEST,
        parcels=tuple(
            Parcel(terms.get(supplier, Terms(supplier)), tuple(found))
            for supplier, found in sorted(lines.items())
        ),
        bound=solved.bound,
        short_kg=short,
        not_organic_kg=_left(model, model.not_organic, needs_kg),
    )
    if solved.is_best or short:
        return plan
    return replace(plan, outcome=Outcome.BEST_FOUND)


def _left(
    model: Model, columns: Mapping[str, int], needs_kg: Mapping[str, float]
) -> dict[str, float]:
    return {
        kind: model.columns[column].high * needs_kg[kind]
        for kind, column in columns.items()
        if model.columns[column].high > NONE_SHORT
    }


def _binds(rule: Rule, offers: Sequence[Offer], terms: Mapping[int, Terms]) -> bool:
    """Tell whether anything offered feels a rule at all."""
    if rule is Rule.ORGANIC_FIRST:
        return len({offer.organic for offer in offers}) > 1
    if rule is Rule.LEAST_ORDER:
        return any(told.least_order > 0 for told in terms.values())
    return rule is Rule.WHOLE_BAGS or not all(offer.in_stock for offer in offers)


def _rule_cost(rule: Rule, best: Plan, plan: Plan) -> RuleCost:
    comparable = plan.short_kg.keys() == best.short_kg.keys()
    if not comparable:
        return RuleCost(rule, None, plan)
    saved = max(0.0, best.cost - plan.cost)
    proved = plan.outcome is Outcome.CHEAPEST
    most = saved if proved else max(saved, best.cost - plan.bound)
    return RuleCost(rule, saved, plan, most)


def _other(
    best: Plan,
    model: Model,
    needs_kg: Mapping[str, float],
    terms: Mapping[int, Terms],
    seconds: float,
) -> Plan | None:
    """Return the cheapest plan that leaves out one of the best plan's suppliers.

    Short and not organic stay as they are in the best plan.
    """
    _hold_as(model, model.short, best.short_kg, needs_kg)
    _hold_as(model, model.not_organic, best.not_organic_kg, needs_kg)
    used = [(model.suppliers[one], 1.0) for one in best.suppliers]
    model.row(used, high=len(used) - 1)
    solved = _least_cost(model, seconds)
    return None if solved is None else _plan(model, solved, needs_kg, terms)


def _hold_as(
    model: Model,
    short: Mapping[str, int],
    left_kg: Mapping[str, float],
    needs_kg: Mapping[str, float],
) -> None:
    for kind, column in short.items():
        share = left_kg.get(kind, 0.0) / needs_kg[kind]
        model.columns[column].high = share
