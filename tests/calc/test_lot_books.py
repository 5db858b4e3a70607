"""The running balance of a lot: it closes, and no count hides what it found."""

import datetime as dt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from reports.calc.season.lot_books import kind_books, lot_book
from reports.calc.shapes.basics import Span
from reports.calc.shapes.lot_books import Entry, Event, LotStory

FIRST = dt.date(2026, 1, 1)
YEAR = Span(FIRST, dt.date(2026, 12, 31))
events = st.builds(
    Event,
    on=st.dates(FIRST - dt.timedelta(200), FIRST + dt.timedelta(500)),
    entry=st.sampled_from(Entry),
    mass_kg=st.floats(0, 500),
)


def story(*told, number=1, kind="Oats"):
    return LotStory(
        number, f"L{number}", kind.lower(), kind, "", True, False, 0.9, None, told
    )


def on(day, entry, kg):
    return Event(FIRST + dt.timedelta(day), entry, kg)


@given(st.lists(events, max_size=12))
def test_the_balance_closes_whatever_was_written_down(told):
    book = lot_book(story(*told), YEAR)
    if book is None:
        return
    row = book.balance
    closing = row.opening_kg + row.came_kg - row.sown_kg - row.gone_kg + row.variance_kg
    assert closing == pytest.approx(row.closing_kg, abs=1e-6)


def test_what_a_count_found_less_than_expected_stays_in_sight():
    book = lot_book(
        story(
            on(-30, Entry.CAME, 100.0),
            on(150, Entry.SOWN, 60.0),
            on(160, Entry.DISCARDED, 5.0),
            on(170, Entry.COUNTED, 30.0),
            on(180, Entry.SOWN, 10.0),
        ),
        YEAR,
    )
    row = book.balance
    assert (row.opening_kg, row.sown_kg, row.gone_kg) == (100.0, 70.0, 5.0)
    assert (row.variance_kg, row.closing_kg, row.counts) == (-5.0, 20.0, 1)


def test_a_count_on_the_day_of_sowing_comes_after_it():
    told = [on(5, Entry.COUNTED, 4.0), on(5, Entry.SOWN, 6.0), on(0, Entry.CAME, 10.0)]
    book = lot_book(story(*told), YEAR)
    assert book.balance.variance_kg == pytest.approx(0.0)


def test_a_lot_that_falls_below_nothing_says_so():
    told = [on(0, Entry.CAME, 10.0), on(9, Entry.SOWN, 12.0)]
    assert lot_book(story(*told), YEAR).falls_below_zero
    counted = [*told, on(8, Entry.COUNTED, 12.0)]
    assert not lot_book(story(*counted), YEAR).falls_below_zero


def test_a_lot_used_up_before_the_period_is_left_out():
    told = [on(-90, Entry.CAME, 10.0), on(-60, Entry.SOWN, 10.0)]
    assert lot_book(story(*told), YEAR) is None


def test_lots_of_a_kind_are_added_up():
    kinds = kind_books(
        [
            story(on(1, Entry.CAME, 10.0), number=1),
            story(on(2, Entry.CAME, 5.0), on(3, Entry.SOWN, 2.0), number=2),
            story(on(2, Entry.CAME, 7.0), number=3, kind="Rye"),
        ],
        YEAR,
    )
    assert [(kind.kind_name, kind.balance.closing_kg) for kind in kinds] == [
        ("Oats", 13.0),
        ("Rye", 7.0),
    ]
