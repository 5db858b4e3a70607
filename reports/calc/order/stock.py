"""Seed on hand put to the plantings that come first."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator, Sequence

from reports.calc.shapes.order import Draw, OnHand, Want

DAYS_A_YEAR = 365.25
# A weight below this is dust. [kg]
DUST_KG = 1e-6


def aged_pls(
    *, pls: float, tested_on: dt.date, on: dt.date, loss_a_year: float
) -> float:
    """Return what of the pure live seed on the tag is still counted on. [0–1]

    Parameters
    ----------
    pls : float
        Pure live seed by the test. [0–1]
    tested_on, on : date
        Days of the test and of sowing; before the test the tag's figure holds.
    loss_a_year : float
        Share of it no longer counted on, for each year. [0–1]

    Returns
    -------
    float
        Pure live seed. [0–1]

    Raises
    ------
    ValueError
        If a share is outside its range.

    Notes
    -----
    ``pls * (1 - loss * years)``, not below 0; an allowance of the farm's own
    ([ASSUMED]_). Only a new test tells what a lot still does.

    Examples
    --------
    >>> day = dt.date(2026, 1, 1)
    >>> aged_pls(pls=0.9, tested_on=day, on=day, loss_a_year=0.1)
    0.9
    """
    if not 0 <= pls <= 1 or not 0 <= loss_a_year <= 1:
        raise ValueError("a share outside 0 to 1")
    years = max(0.0, (on - tested_on).days / DAYS_A_YEAR)
    return pls * max(0.0, 1.0 - loss_a_year * years)


def drawn(
    wants: Sequence[Want],
    lots: Sequence[OnHand],
    *,
    loss_a_year: float,
    oldest_years: float,
) -> tuple[tuple[Draw, ...], tuple[Want, ...]]:
    """Return what each planting takes from the lots on hand, and what it still wants.

    Parameters
    ----------
    wants : sequence of Want
        Pure live seed by planting. [kg] The earliest sowing is served first.
    lots : sequence of OnHand
        Seed on hand. [kg] Organic seed goes first, then the oldest test. A mix goes
        only to plantings that want all its kinds, and over none of them.
    loss_a_year : float
        As in :func:`aged_pls`. [1/year] 0 to 1.
    oldest_years : float
        Lots with an older test on the day of sowing are not counted on. [year]

    Returns
    -------
    draws : tuple of Draw
        In the order they are made.
    left : tuple of Want
        What no lot covers.

    Examples
    --------
    >>> day = dt.date(2026, 5, 1)
    >>> lot = OnHand(1, "oats", 10.0, 0.9, day, True)
    >>> draws, left = drawn(
    ...     [Want(1, "oats", day, 18.0)], [lot], loss_a_year=0.0, oldest_years=2
    ... )
    >>> draws[0].seed_kg, left[0].pls_kg
    (10.0, 9.0)
    """
    in_turn = sorted(lots, key=_turn)
    over = {lot.lot: lot.left_kg for lot in lots}
    draws: list[Draw] = []
    left: list[Want] = []
    for wanted in _by_planting(wants):
        missing = {want.kind: want.pls_kg for want in wanted}
        on = wanted[0].on
        fit = list(_fit(in_turn, on, loss_a_year, oldest_years))
        # A mix fits few plantings, and goes to them before seed of one kind.
        for lot, contents in sorted(fit, key=lambda one: len(one[1]) == 1):
            if not all(missing.get(kind, 0.0) > DUST_KG for kind in contents):
                continue
            enough = min(missing[kind] / pls for kind, pls in contents.items())
            seed_kg = min(over[lot.lot], enough)
            if seed_kg <= DUST_KG:
                continue
            over[lot.lot] -= seed_kg
            for draw in _draws(wanted[0].planting, lot.lot, seed_kg, contents):
                missing[draw.kind] -= draw.pls_kg
                draws.append(draw)
        left += [
            Want(want.planting, want.kind, want.on, missing[want.kind])
            for want in wanted
            if missing[want.kind] > DUST_KG
        ]
    return tuple(draws), tuple(left)


def _by_planting(wants: Sequence[Want]) -> list[list[Want]]:
    """Return the wants of each planting, the earliest sowing first."""
    plantings: dict[tuple[int, dt.date], list[Want]] = {}
    for want in sorted(wants, key=lambda one: one.on):
        plantings.setdefault((want.planting, want.on), []).append(want)
    return list(plantings.values())


def _turn(lot: OnHand) -> tuple[bool, dt.date, int]:
    return (not lot.organic, lot.tested_on or dt.date.max, lot.lot)


def _fit(
    lots: Sequence[OnHand], on: dt.date, loss_a_year: float, oldest_years: float
) -> Iterator[tuple[OnHand, dict[str, float]]]:
    """Return the lots that are counted on, each with the live seed of its kinds."""
    for lot in lots:
        if lot.tested_on is None:
            continue
        if (on - lot.tested_on).days > oldest_years * DAYS_A_YEAR:
            continue
        alive = {
            kind: aged_pls(
                pls=pls, tested_on=lot.tested_on, on=on, loss_a_year=loss_a_year
            )
            for kind, pls in lot.contents
            if pls
        }
        if len(alive) == len(lot.contents) and all(alive.values()):
            yield lot, alive


def _draws(
    planting: int, lot: int, seed_kg: float, contents: dict[str, float]
) -> Iterator[Draw]:
    whole = sum(contents.values())
    for kind, pls in contents.items():
        part = seed_kg * pls / whole
        taken = seed_kg if len(contents) > 1 else None
        yield Draw(planting, kind, lot, part, seed_kg * pls, taken)
