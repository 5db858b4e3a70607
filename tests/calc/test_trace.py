"""From seed to sale and back, and balances that add up."""

import dataclasses

import pytest

from reports.calc.shapes import books as rows
from reports.calc.shapes.basics import Span
from reports.calc.shapes.trace import Goods, Link, Missing
from reports.calc.trace import balances, startable, trace, woven
from reports.calc.trace.balance import struck
from tests.calc import books as at
from tests.calc.books import CLEAN, but, day, spoiled

SHARES = {"packed_share": 0.05, "bulk_share": 0.10}


def links(way):
    return [stop.link for stop in way.stops]


def gaps(way):
    return {gap.missing for gap in way.gaps}


@pytest.mark.parametrize(
    ("noun", "number"), [("seed-lots", 1), ("harvest-lots", 1), ("sales", 1)]
)
def test_a_lot_leads_from_its_supplier_to_its_sale(noun, number):
    told = links(trace(CLEAN, noun, number))
    assert told[0] is Link.SUPPLIER or noun == "sales"
    assert {Link.SEED, Link.PLANTING, Link.HARVEST, Link.SALE} <= set(told)
    order = [list(Link).index(link) for link in told]
    assert order == sorted(order)


def test_going_back_from_a_sale_does_not_lead_into_another_sale():
    other = but(at.GONE, id=2, buyer="Another")
    way = trace(spoiled(gone=(at.GONE, other)), "sales", 1)
    assert [stop.id for stop in way.stops if stop.link is Link.SALE] == [1]


def test_an_input_leads_to_every_lot_of_the_ground_it_was_put_on():
    way = trace(CLEAN, "input-products", 1)
    assert {Link.PUT_ON, Link.PLANTING, Link.HARVEST, Link.SALE} <= set(links(way))
    late = spoiled(puts=(but(at.PUT, on=day("12-01")),))
    assert Link.HARVEST not in links(trace(late, "input-products", 1))


@pytest.mark.parametrize(
    ("missing", "books"),
    [
        (Missing.SUPPLIER, spoiled(lots=(but(at.LOT, supplier=""),))),
        (Missing.CERTIFICATE, spoiled(lots=(but(at.LOT, certificate=""),))),
        (Missing.SEED_LOT, spoiled(stands=(but(at.STAND, lines=()),))),
        (Missing.PLANTING, spoiled(crops=(but(at.CROP, stand_id=None),))),
        (Missing.STORE_OR_SALE, spoiled(kept=(), gone=())),
        (Missing.INVOICE, spoiled(gone=(but(at.GONE, invoice=""),))),
        (Missing.INPUT_LOT, CLEAN),
    ],
)
def test_each_missing_link_is_named(missing, books):
    ways = [trace(books, noun, 1) for noun in ("harvest-lots", "seed-lots")]
    assert missing in gaps(ways[0]) | gaps(ways[1])


def delivered(**more):
    """Compost as it came, and put on by its lot."""
    partner = CLEAN.partners[0].name
    lot = rows.Delivered(
        1, 1, "LC-9", partner, day("01-05"), 900.0, at.PUT.measure, "R-14"
    )
    put = but(at.PUT, product_lot="lc-9 ")
    return spoiled(delivered=(but(lot, **more),), puts=(put,))


def test_a_lot_of_an_input_leads_from_its_supplier_to_the_sale():
    way = trace(delivered(), "input-lots", 1)
    assert {Link.SUPPLIER, Link.PUT_ON, Link.PLANTING, Link.SALE} <= set(links(way))
    assert {Missing.INPUT_LOT, Missing.DELIVERY} & gaps(way) == set()


def test_a_lot_put_on_that_never_came_is_named_where_others_came():
    assert Missing.DELIVERY in gaps(trace(delivered(number="X"), "harvest-lots", 1))
    assert Missing.INVOICE in gaps(trace(delivered(invoice=""), "harvest-lots", 1))


def test_many_ways_are_walked_over_books_woven_once():
    web = woven(CLEAN)
    for stop in startable(CLEAN):
        alone = trace(CLEAN, stop.noun, stop.id)
        assert trace(CLEAN, stop.noun, stop.id, web=web) == alone


@pytest.mark.parametrize("measure", ["mass", "volume"])
def test_an_input_that_came_less_what_was_put_on_is_what_ought_to_be_left(measure):
    books = delivered(measure=measure)
    put = but(books.puts[0], measure=measure)
    told = balances(but(books, puts=(put,)), at.SEASON, **SHARES)
    one = next(one for one in told if one.goods is Goods.INPUTS)
    assert (one.measure, one.came, one.went) == (measure, 900.0, put.amount)
    assert one.reckoned == 900.0 - put.amount


def test_a_lot_that_is_not_there_has_no_way():
    assert trace(CLEAN, "harvest-lots", 99) is None
    assert trace(CLEAN, "nonsense", 1) is None


def test_a_way_can_begin_at_any_lot():
    for stop in startable(CLEAN):
        assert trace(CLEAN, stop.noun, stop.id).start == stop


def test_ten_thousand_plantings_are_walked_in_a_second():
    stands = tuple(
        but(at.STAND, id=n, field_id=n, lines=(rows.Line("Rye", False, 1, 1.0),))
        for n in range(1, 10_001)
    )
    way = trace(spoiled(stands=stands), "seed-lots", 1)
    assert sum(stop.link is Link.PLANTING for stop in way.stops) == 10_000


def test_seed_received_less_seed_sown_is_what_ought_to_be_left():
    told = balances(CLEAN, at.SEASON, **SHARES)
    seed = next(one for one in told if one.goods is Goods.SEED)
    assert (seed.opening, seed.came, seed.went) == (0, 50, 20)
    assert (seed.reckoned, seed.variance) == (30, None)
    assert seed.is_within


def test_a_count_that_differs_beyond_the_tolerance_does_not_add_up():
    def counted(kg):
        count = rows.CountedStock(1, "seed-lots", 1, day("11-01"), kg)
        found = balances(spoiled(counts=(count,)), at.SEASON, **SHARES)
        return next(one for one in found if one.goods is Goods.SEED)

    assert counted(28).variance == -2
    assert counted(28).is_within
    assert not counted(20).is_within


def test_a_lot_below_nothing_does_not_add_up():
    books = spoiled(crops=(but(at.CROP, mass_kg=50.0),))
    told = balances(books, at.SEASON, **SHARES)
    assert not next(one for one in told if one.goods is Goods.PRODUCT).is_within


def test_the_closing_of_one_year_is_the_opening_of_the_next():
    flows = [(day("2025-03-01"), 100.0), (day("2025-06-01"), -30.0)]
    flows += [(day("2026-05-01"), -40.0)]
    years = [Span(day(f"{y}-01-01"), day(f"{y}-12-31")) for y in (2025, 2026)]
    first, second = (struck(flows, year, []) for year in years)
    assert first[0] + first[1] - first[2] == second[0] == 70
    assert second[1:3] == (0, 40)
    counted = struck(flows, years[1], [(day("2025-12-30"), 65.0)])
    assert counted[0] == 65


def test_a_lot_that_was_not_handled_is_not_listed():
    period = Span(day("2020-01-01"), day("2020-12-31"))
    assert balances(CLEAN, period, **SHARES) == ()
    empty = dataclasses.replace(CLEAN, lots=(), crops=(), stands=())
    assert balances(empty, at.SEASON, **SHARES) == ()


def test_an_input_counted_before_and_after_ought_to_have_lost_what_was_put_on():
    counts = tuple(
        rows.CountedStock(n, "input-products", 1, day(when), kg)
        for n, (when, kg) in enumerate([("2025-12-31", 500.0), ("10-01", 290.0)])
    )
    told = balances(spoiled(counts=counts), at.SEASON, **SHARES)
    one = next(one for one in told if one.goods is Goods.INPUTS)
    assert (one.opening, one.went, one.variance) == (500, 200, -10)
    assert one.is_within
