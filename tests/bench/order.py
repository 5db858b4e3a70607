"""The cheapest seed order beside the solver alone: python -m tests.bench.order."""

import argparse
import random

from reports.calc.order import cheapest, compared, solving
from reports.calc.shapes.order import Offer, Price, Terms
from tests.bench.stopwatch import Stopwatch

SEED = 20260401


def market(kinds, suppliers, chance):
    """A spring's price lists, made up: each kind from about half of the suppliers."""
    needs = {f"kind {n}": chance.uniform(2.0, 900.0) for n in range(kinds)}
    offers = []
    for place, kind in enumerate(needs):
        a_kg = chance.uniform(0.8, 9.0)
        for supplier in chance.sample(range(suppliers), max(1, suppliers // 2)):
            offers.append(
                Offer(
                    id=len(offers),
                    supplier=supplier,
                    kind=kind,
                    organic=place % 3 == 0 or chance.random() < 0.6,
                    pls=chance.uniform(0.7, 0.95),
                    prices=tuple(price_list(a_kg * chance.uniform(0.8, 1.3), chance)),
                    in_stock=chance.random() < 0.95,
                )
            )
    terms = {
        n: Terms(n, chance.uniform(10, 90), chance.uniform(0, 0.4), 100.0 * (n % 3))
        for n in range(suppliers)
    }
    return needs, offers, terms


def price_list(a_kg, chance):
    """Small and large bags, with a break at ten of the large."""
    yield Price(4.5359237, 1, round(a_kg * 4.54 * chance.uniform(1.2, 1.5), 2))
    yield Price(22.6796185, 1, round(a_kg * 22.68, 2))
    yield Price(22.6796185, 10, round(a_kg * 22.68 * 0.92, 2))


def main():
    asked = argparse.ArgumentParser(prog="python -m tests.bench.order")
    asked.add_argument("--kinds", type=int, default=50)
    asked.add_argument("--suppliers", type=int, default=12)
    asked.add_argument("--laps", type=int, default=3)
    told = asked.parse_args()
    chance = random.Random(SEED)
    print(f"{told.kinds} kinds, {told.suppliers} suppliers")
    for _ in range(told.laps):
        lap(*market(told.kinds, told.suppliers, chance))


def lap(needs, offers, terms):
    """Time one plan and then everything, each beside the solver alone."""
    for work in (cheapest, compared):
        watch = Stopwatch()
        with watch.at({solving._run: "solver"}):
            told = watch.timed("all", work)(needs, offers, terms)
        solver, whole = sum(watch.laps["solver"]), watch["all"]
        best = getattr(told, "best", told)
        print(
            f"{work.__name__}: {whole:.2f} s, of which the solver alone {solver:.2f} s "
            f"in {len(watch.laps['solver'])} runs; {len(offers)} offers, "
            f"{best.outcome.value} from {len(best.parcels)} suppliers, "
            f"cost {best.cost:,.2f}, bound {best.bound:,.2f}"
        )


if __name__ == "__main__":
    main()
