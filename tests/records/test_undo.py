"""A void lifted again: by whom, until when, and what the history shows."""

import datetime as dt

import pytest
from django.urls import reverse
from django.utils import timezone

from farm.chain import NOTHING
from farm.models import Change
from farm.writing import void
from records import undoing
from tests.factories import PlantingFactory


@pytest.fixture
def planting(world):
    """Struck out a minute ago by a hand of the crew."""
    row = PlantingFactory(
        farm=world.farm, written_by=world.crew, field=world.ours["fields"]
    )
    ago = timezone.now() - dt.timedelta(minutes=1)
    void(row, by=world.crew, now=ago, reason="Wrong field")
    return row


def at(planting, name="undo"):
    return reverse(
        f"records:{name}", args=[planting.farm.slug, "plantings", planting.pk]
    )


def test_one_press_puts_it_back_and_history_keeps_both(world, planting, as_person):
    client = as_person(world.crew)
    page = client.get(at(planting, "page")).content.decode()
    assert f'action="{at(planting)}"' in page
    answer = client.post(at(planting), follow=True)
    planting.refresh_from_db()
    assert planting.voided_at is None
    assert planting.void_reason == ""
    assert "Put back" in answer.content.decode()
    lines = Change.objects.filter(noun="planting", object_id=planting.pk)
    last = list(lines.order_by("number"))[-2:]
    assert [row.verb for row in last] == ["voided", "put back"]
    assert (last[1].reason, last[1].by) == ("undone", world.crew)
    assert all(row.digest == row.sealed() for row in last)
    assert last[1].prev == last[0].digest != NOTHING


def test_after_a_quarter_of_an_hour_it_takes_a_manager(world, planting, as_person):
    long_ago = timezone.now() - dt.timedelta(minutes=undoing.OWN_MINUTES + 1)
    type(planting).objects.filter(pk=planting.pk).update(voided_at=long_ago)
    crew = as_person(world.crew)
    assert at(planting) not in crew.get(at(planting, "page")).content.decode()
    assert crew.post(at(planting)).status_code == 403
    assert as_person(world.manager).post(at(planting)).status_code == 302
    planting.refresh_from_db()
    assert planting.voided_at is None


def test_somebody_else_of_the_crew_cannot(world, planting):
    theirs = world.farm.memberships.get(user=world.crew)
    type(planting).objects.filter(pk=planting.pk).update(voided_by=world.owner)
    planting.refresh_from_db()
    assert not undoing.may_undo(planting, by=theirs, now=timezone.now())


def test_what_it_leans_on_must_stand(world, planting, as_person):
    field = planting.field
    void(field, by=world.owner, now=timezone.now(), reason="Sold")
    told = as_person(world.owner).post(at(planting), follow=True).content.decode()
    assert "leans on a record that is voided" in told
    planting.refresh_from_db()
    assert planting.voided_at is not None


def test_a_name_taken_meanwhile_stays_taken(world, as_person):
    old = world.ours["suppliers"]
    void(old, by=world.owner, now=timezone.now(), reason="Twice")
    type(old)(
        farm=old.farm, name=old.name, written_by=world.owner, written_at=timezone.now()
    ).save()
    address = reverse("records:undo", args=[old.farm.slug, "suppliers", old.pk])
    told = as_person(world.owner).post(address, follow=True).content.decode()
    assert "taken its place" in told
    old.refresh_from_db()
    assert old.voided_at is not None
