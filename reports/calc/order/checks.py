"""What makes an offer unfit to be reckoned with."""

from __future__ import annotations

from itertools import pairwise

from reports.calc.shapes.order import Offer, OfferTrouble, Price


def trouble_with(offer: Offer) -> OfferTrouble | None:
    """Return why an offer cannot be reckoned with, or None.

    Parameters
    ----------
    offer : Offer
        Bags [kg] above 0, numbers of bags from 1 on, prices [money] of 0 or more that
        do not rise with the number of bags of a size.

    Returns
    -------
    OfferTrouble or None
        The first trouble found.

    Examples
    --------
    >>> bag = Price(bag_kg=25.0, from_bags=1, each=40.0)
    >>> trouble_with(Offer(1, 1, "oats", True, 0.9, (bag,))) is None
    True
    >>> trouble_with(Offer(1, 1, "oats", True, 0.0, (bag,))).value
    'no_pure_live_seed'
    """
    if not offer.prices:
        return OfferTrouble.NO_PRICE
    if any(not price.bag_kg > 0 for price in offer.prices):
        return OfferTrouble.NO_BAG_SIZE
    shares = [pls for _, pls in offer.contents]
    if not min(shares) > 0 or not sum(shares) <= 1:
        return OfferTrouble.NO_PURE_LIVE_SEED
    if not all(_fall(rows) for rows in by_size(offer.prices)):
        return OfferTrouble.BREAKS_OUT_OF_ORDER
    return None


def by_size(prices: tuple[Price, ...]) -> list[list[Price]]:
    """Return the prices of each size of bag, as they stand in the table."""
    sizes: dict[float, list[Price]] = {}
    for price in prices:
        sizes.setdefault(price.bag_kg, []).append(price)
    return list(sizes.values())


def _fall(rows: list[Price]) -> bool:
    first = rows[0]
    return (
        first.from_bags >= 1
        and all(row.each >= 0 for row in rows)
        and all(
            one.from_bags < two.from_bags and one.each >= two.each
            for one, two in pairwise(rows)
        )
    )
