"""The post for the crew: where not to go, what not to harvest, and no names."""

import datetime as dt

import pytest
from django.urls import reverse
from django.utils import timezone

from reports.calc.rules.compost import counted_raw
from reports.calc.rules.post import first_harvests, keep_out, on_show
from reports.calc.shapes.rules import RuleId
from tests.calc import books as at
from tests.calc.books import CLEAN, but, day, rule, spoiled
from tests.calc.rules.faults import MANURE
from tests.factories import ApplicationFactory, InputProductFactory


@pytest.mark.parametrize(
    ("now", "posted"),
    [
        (dt.datetime(2026, 6, 10, 15), True),
        (dt.datetime(2026, 6, 11, 1, 59), True),
        (dt.datetime(2026, 6, 11, 2), False),
        (dt.datetime(2026, 6, 9, 12), False),
    ],
)
def test_a_field_is_posted_until_the_hour_its_interval_is_over(now, posted):
    """12 hours from two in the afternoon end at two in the night."""
    assert bool(keep_out(CLEAN, now=now)) is posted


def test_a_spray_without_an_interval_is_posted_as_not_known():
    books = spoiled(products=(at.PRODUCT, but(at.SPRAY, reentry_hours=None)))
    told = keep_out(books, now=dt.datetime(2026, 6, 12))
    assert [one.until for one in told] == [None]
    assert [one.initials for one in told] == ["W."]


def test_what_was_sprayed_stays_on_show_thirty_days_past_its_interval():
    """40 CFR 170.311(b): 24 hours, 30 days past the interval, kept 2 years."""
    posting, last = rule(RuleId.POSTING), dt.datetime(2026, 7, 11, 1, 59)
    (told,) = on_show(CLEAN, posting, now=last)
    assert (told.due, told.until) == (
        dt.datetime(2026, 6, 11, 14),
        dt.datetime(2026, 7, 11, 2),
    )
    assert (told.posted_at, told.kept_until) == (
        dt.datetime(2026, 6, 10, 15),
        day("2028-06-11"),
    )
    assert on_show(CLEAN, posting, now=last + dt.timedelta(minutes=1)) == ()


def test_what_is_on_show_names_crop_number_hours_and_interval():
    """40 CFR 170.311(b), as extension services list it; active ingredients stand on
    the label, which is posted beside."""
    posting, now = rule(RuleId.POSTING), dt.datetime(2026, 6, 12)
    puts = (but(at.SPRAYED, stand_id=1),)
    (told,) = on_show(spoiled(puts=puts), posting, now=now)
    assert (told.crop, told.registration) == ("Buckwheat", "1-2-3")
    assert (told.started_at, told.reentry_hours) == (dt.time(13), 12)
    assert told.due == dt.datetime(2026, 6, 11, 14)
    cut = but(at.CROP, on=day("06-11"))
    (told,) = on_show(spoiled(puts=puts, crops=(cut,)), posting, now=now)
    assert told.due == dt.datetime(2026, 6, 11, 6)


def test_an_hour_that_nobody_wrote_down_is_not_posted():
    books = spoiled(puts=(but(at.SPRAYED, started_at=None, finished_at=None),))
    (told,) = on_show(books, rule(RuleId.POSTING), now=dt.datetime(2026, 6, 12))
    assert not told.is_timed


def test_a_harvest_waits_for_the_label_and_for_manure():
    put = but(at.PUT, id=3, product_id=3, worked_in_on=day("03-01"))
    books = spoiled(products=(*CLEAN.products, MANURE), puts=(put, at.SPRAYED))
    told = first_harvests(books, today=day("06-10"), manure_days=120)
    assert {(one.raw_manure, one.on) for one in told} == {
        (True, day("06-29")),
        (False, day("06-11")),
    }
    assert first_harvests(books, today=day("06-29"), manure_days=120) == ()
    never = spoiled(
        products=(*CLEAN.products, MANURE), puts=(but(put, worked_in_on=None),)
    )
    told = first_harvests(never, today=day("09-01"), manure_days=120)
    assert [one.on for one in told] == [None]


def test_what_shares_ground_with_a_sprayed_field_waits_with_it():
    bed = but(at.GROUND, id=2, name="North bed", parent_id=at.GROUND.id)
    books = spoiled(fields=(at.GROUND, bed), puts=(at.SPRAYED,))
    told = first_harvests(books, today=day("06-10"), manure_days=120)
    assert [one.field for one in told] == ["North", "North bed"]


def test_a_spray_whose_label_was_not_typed_holds_the_harvest_until_somebody_reads_it():
    books = spoiled(
        products=(at.PRODUCT, but(at.SPRAY, preharvest_days=None)), puts=(at.SPRAYED,)
    )
    (told,) = first_harvests(books, today=day("06-12"), manure_days=120)
    assert (told.on, told.raw_manure) == (None, False)


def test_compost_without_its_heat_holds_the_harvest_as_raw_manure_does():
    yard = at.rows.Product(3, "Yard compost", "compost")
    put = but(at.PUT, id=3, product_id=3, on=day("05-01"), worked_in_on=day("05-01"))
    books = spoiled(products=(*CLEAN.products, yard), puts=(put,))
    raw = counted_raw(books, rule(RuleId.COMPOST))
    told = first_harvests(books, today=day("06-10"), manure_days=120, raw=raw)
    assert [(one.on, one.compost) for one in told] == [(day("08-29"), True)]


@pytest.mark.django_db
def test_the_page_names_the_field_and_no_person(world, as_person):
    soap = InputProductFactory(
        farm=world.farm, type="pest", reentry_hours=400, registration="84059-3"
    )
    ApplicationFactory(
        farm=world.farm,
        field=world.ours["fields"],
        product=soap,
        applied_on=timezone.now().date() - dt.timedelta(days=1),
        done_by="Odalys Brandvold",
        applicator_licence="NE-4711",
    )
    page = as_person(world.crew).get(reverse("reports:post", args=["alder-hill"]))
    told = page.content.decode()
    assert "North" in told
    assert "O. B." in told
    assert "Brandvold" not in told
    assert "NE-4711" not in told
    assert "registration 84059-3" in told
    assert "interval on the label, hours: 400" in told
