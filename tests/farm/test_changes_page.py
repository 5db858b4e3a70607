"""The farm's page of changes, narrowed by who, what, when and words."""

import datetime as dt

import pytest
from django.urls import reverse

from farm.models import Change
from farm.writing import void, write
from tests.factories import FieldFactory

pytestmark = pytest.mark.django_db
JUNE = dt.datetime(2026, 6, 3, 15, tzinfo=dt.UTC)
JULY = dt.datetime(2026, 7, 9, 15, tzinfo=dt.UTC)


@pytest.fixture
def changes(world):
    field = FieldFactory.build(farm=world.farm, name="Slope", written_by=None)
    write(field, by=world.owner, now=JUNE)
    void(field, by=world.manager, now=JULY, reason="Measured twice")
    return field


def shown(client, world, **asked):
    url = reverse("records:changes", args=[world.farm.slug])
    return [
        change.verb
        for change in client.get(url, asked).context["page_obj"]
        if change.noun == "field"
    ]


@pytest.mark.parametrize(
    ("asked", "found"),
    [
        ({"words": "twice"}, ["voided"]),
        ({"words": "slope", "verb": "wrote"}, ["wrote"]),
        ({"words": "slope", "last": "2026-06-30"}, ["wrote"]),
        ({"words": "slope", "first": "2026-07-01"}, ["voided"]),
        ({"noun": "field", "words": "slope"}, ["voided", "wrote"]),
        ({"noun": "seedlot"}, []),
    ],
)
def test_changes_are_narrowed(world, owner_client, changes, asked, found):
    assert shown(owner_client, world, **asked) == found


def test_changes_are_narrowed_by_who_made_them(world, owner_client, changes):
    assert shown(owner_client, world, by=world.manager.pk, words="slope") == ["voided"]


def test_people_of_other_farms_are_not_offered(world, owner_client, changes):
    theirs = FieldFactory.build(farm=world.theirs.farm, written_by=None)
    write(theirs, by=world.stranger, now=JUNE)
    url = reverse("records:changes", args=[world.farm.slug])
    assert "Stranger" not in owner_client.get(url).content.decode()


def test_the_page_asks_no_more_for_many_changes_than_for_few(
    world, owner_client, changes, django_assert_max_num_queries
):
    for n in range(30):
        field = FieldFactory.build(farm=world.farm, name=f"F{n}", written_by=None)
        write(field, by=world.owner, now=JULY)
    assert Change.objects.count() > 30
    with django_assert_max_num_queries(8):
        owner_client.get(reverse("records:changes", args=[world.farm.slug]))
