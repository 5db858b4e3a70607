"""The Now page and the week sheet."""

import datetime as dt

import pytest
from django.urls import reverse

from records.models import WeatherDay
from reports import pdf
from reports.papers.ahead import asked_day
from reports.papers.now import now_paper
from reports.papers.week import week_paper
from tests import world as cast
from tests.factories import (
    DutyFactory,
    FieldFactory,
    ObservationFactory,
    PlantingFactory,
    TerminationFactory,
)
from tests.reports.ahead.places import (
    SOWN,
    TODAY,
    address,
    on,
    page,
)


def now(world, **more):
    return now_paper(world.farm, on=TODAY, today=TODAY, me=world.owner, **more)


def test_the_now_page_tells_what_is_open_and_what_closes(world, stand, owner_client):
    paper = now(world)
    told = {(row.field_name, row.window.kind.value) for row in paper["now"].due}
    assert ("Creek", "cut") in told
    text = page(owner_client, world, "reports:now").content.decode()
    assert "Creek" in text and "Cut, to grow back" in text


def test_each_date_on_it_can_be_pressed_to_be_explained(world, stand, owner_client):
    text = page(owner_client, world, "reports:now").content.decode()
    explained = address(world, "reports:stand", stand.pk, query=f"{on()}#cut")
    assert explained in text
    told = page(owner_client, world, "reports:stand", stand.pk).content.decode()
    assert 'id="cut"' in told and "Why it closes" in told


def test_what_was_ended_asks_for_nothing_more(world, here, stand):
    TerminationFactory(**here, planting=stand, ended_on=TODAY, reason="weeds")
    names = {row.field_name for row in now(world)["now"].due}
    assert "Creek" not in names


def test_records_that_are_missing_are_named(world, here, stand):
    lacks = {(row.field_name, row.missing.value) for row in now(world)["now"].lacks}
    assert ("Creek", "never_seen_up") in lacks
    ObservationFactory(**here, planting=stand, seen="emerged", seen_on=SOWN)
    lacks = {(row.field_name, row.missing.value) for row in now(world)["now"].lacks}
    assert ("Creek", "never_seen_up") not in lacks


def test_an_end_without_its_reason_is_asked_for(world, here, stand):
    TerminationFactory(**here, planting=stand, ended_on=TODAY, reason="")
    lacks = {(row.field_name, row.missing.value) for row in now(world)["now"].lacks}
    assert ("Creek", "no_reason") in lacks


def test_duties_stand_on_it_by_field_and_as_a_list(world, here, stand, owner_client):
    DutyFactory(
        **here,
        field=stand.field,
        words="Sharpen the scythe",
        earliest_on=TODAY,
        latest_on=TODAY,
    )
    for query in (on(), f"{on()}&by=field"):
        text = page(owner_client, world, "reports:now", query=query).content.decode()
        assert "Sharpen the scythe" in text


def test_a_late_duty_stands_once_above_the_others(world, here, stand):
    days = {"earliest_on": SOWN, "latest_on": TODAY - dt.timedelta(days=1)}
    late = DutyFactory(**here, **days, field=stand.field, words="Mow the edge")
    paper = now(world)
    assert late.pk in {row.id for row in paper["late"]}
    assert late.pk not in {row.id for row in paper["duties"]}
    assert paper["later"] == 0


def test_nothing_that_happened_later_is_known_on_an_earlier_day(world, here, stand):
    TerminationFactory(**here, planting=stand, ended_on=TODAY, reason="weeds")
    earlier = TODAY - dt.timedelta(days=2)
    paper = now_paper(world.farm, on=earlier, today=TODAY, me=world.owner)
    assert "Creek" in {row.field_name for row in paper["now"].due}


@pytest.mark.parametrize(
    ("asked", "day"),
    [
        ("2026-07-01", dt.date(2026, 7, 1)),
        ("2026-08-01", TODAY),
        ("soon", TODAY),
        ("", TODAY),
        ("0001-01-01", TODAY),
    ],
)
def test_only_days_up_to_today_can_be_looked_from(asked, day):
    assert asked_day(asked, TODAY) == day


def test_thirty_fields_take_no_more_queries(
    world, here, stand, django_assert_num_queries
):
    with django_assert_num_queries(18) as first:
        now(world)
    for number in range(30):
        field = FieldFactory(**here, name=f"Bed {number}")
        PlantingFactory(**here, field=field, sown_on=SOWN, line__kind=world.ours.kind)
    with django_assert_num_queries(len(first)):
        now(world)


def test_without_weather_the_page_says_what_it_cannot_say(
    world, here, stand, as_person
):
    WeatherDay.objects.all().delete()
    client = as_person(world.crew)
    text = page(client, world, "reports:now").content.decode()
    assert "too few years are on record" in text
    assert "dates go by days, and no odds of frost are told" in text
    told = page(client, world, "reports:stand", stand.pk).content.decode()
    assert "No weather is on record" in told


def test_the_week_sheet_prints_what_is_to_be_done(world, here, stand):
    DutyFactory(
        **here,
        field=stand.field,
        words="Mow the strip",
        earliest_on=TODAY,
        latest_on=TODAY + dt.timedelta(days=2),
    )
    paper = week_paper(world.farm, on=TODAY, today=TODAY)
    assert "Creek" in [part.name for part in paper["fields"]]
    printed = pdf.print_paper("week_print", paper)
    assert printed.startswith(b"%PDF") and len(printed) > 2000
    assert printed == pdf.print_paper("week_print", paper)


def test_a_duty_made_of_a_window_stands_once_on_the_week_sheet(world, here, stand):
    days = {"earliest_on": TODAY, "latest_on": TODAY + dt.timedelta(days=3)}
    duty = DutyFactory(
        **here, **days, field=stand.field, planting=stand, what="cut", words=""
    )
    paper = week_paper(world.farm, on=TODAY, today=TODAY)
    (part,) = [part for part in paper["fields"] if part.name == "Creek"]
    assert part.duties == ()
    carried = [row.duty.id for row in part.due if row.duty]
    assert carried == [duty.pk]


def test_a_farm_without_anything_has_a_now_page(db, as_person):
    member = cast.MembershipFactory(farm__slug="bare", farm__name="Bare")
    client = as_person(member.user)
    for name in ("now", "gaps", "foretold"):
        assert client.get(reverse(f"reports:{name}", args=["bare"])).status_code == 200
