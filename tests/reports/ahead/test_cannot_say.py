"""With poor weather, or too late, the pages say what they can and cannot tell."""

import datetime as dt

import pytest
from django.db.models import F

from records.models import WeatherDay
from tests.reports.ahead.places import SOWN, TODAY, page, years


def three_years(world, stand):
    years(world.ours["stations"], count=2)


def no_frost(world, stand):
    WeatherDay.objects.update(tmin_c=F("tmin_c") + 25, tmax_c=F("tmax_c") + 25)


def sown_long_ago(world, stand):
    stand.sown_on = SOWN - dt.timedelta(days=90)
    stand.save()


def south(world, stand):
    world.farm.latitude = -35.0
    world.farm.save()


@pytest.mark.parametrize(
    ("made_so", "said"),
    [
        (three_years, "Fewer than five years are on record"),
        (no_frost, "No frost cold enough to kill it is on record within a year"),
        (sown_long_ago, "Every window is past"),
        (south, "The farm lies south of the equator"),
    ],
)
def test_the_page_of_a_stand_says_what_it_cannot_say(
    world, stand, owner_client, made_so, said
):
    before = page(owner_client, world, "reports:stand", stand.pk).content.decode()
    assert said not in before
    made_so(world, stand)
    assert said in page(owner_client, world, "reports:stand", stand.pk).content.decode()


def test_a_day_no_year_could_be_sown_on_says_so(world, stand, owner_client):
    no_day = TODAY.replace(month=11, day=20)
    query = f"?prefix=rows-0&rows-0-field={stand.field_id}"
    query += f"&rows-0-kind={world.ours.kind.pk}&rows-0-planned_on={no_day}"
    text = page(owner_client, world, "reports:plan-check", query=query).content.decode()
    assert "too often come before it has grown far enough" in text


@pytest.mark.parametrize(
    ("day", "is_said"), [("2026-09-25", True), (str(TODAY), False)]
)
def test_days_to_sow_that_are_next_years_are_said_to_be(
    world, stand, owner_client, day, is_said
):
    told = [owner_client, world, "reports:sowing", world.ours.kind.slug]
    text = page(*told, query=f"?on={day}").content.decode()
    assert ("No day is left this year; these are the days" in text) is is_said
