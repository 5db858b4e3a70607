"""What the crew is not told: numbers of licences, and where others live."""

import datetime as dt

import pytest
from django.urls import reverse

from records.models import Application, Supplier
from tests.factories import (
    ApplicationFactory,
    ApplicatorLicenceFactory,
    AttachmentFactory,
    SupplierFactory,
)
from tests.records.typed import typed

SECRETS = {"applicator_licence": "NE-4711", "address": "9 Far Lane", "licence": "C-12"}


@pytest.fixture
def told(world):
    """A record with each of the private things in it, written by the owner."""
    here = {"farm": world.farm, "written_by": world.owner}
    put = ApplicationFactory(**here, applicator_licence="NE-4711")
    hired = SupplierFactory(**here, address="9 Far Lane", licence="C-12")
    return {"applications": put, "suppliers": hired}


def page(client, name, *more):
    answer = client.get(reverse(f"records:{name}", args=["alder-hill", *more]))
    text = b"".join(answer) if answer.streaming else answer.content
    return text.decode()


@pytest.mark.django_db
@pytest.mark.parametrize("noun", ["applications", "suppliers"])
@pytest.mark.parametrize("name", ["page", "table-csv"])
def test_private_fields_are_for_managers_and_inspectors(
    noun, name, told, world, as_person
):
    """A crew copy shows no numbers of licences and no addresses: our own choice."""
    row = told[noun]
    more = (noun, row.pk) if name == "page" else (noun,)
    secrets = {SECRETS[field] for field in row.PRIVATE}
    for person in (world.owner, world.manager, world.inspector):
        seen = page(as_person(person), name, *more)
        assert all(secret in seen for secret in secrets)
    seen = page(as_person(world.crew), name, *more)
    assert not any(secret in seen for secret in secrets)


@pytest.mark.django_db
def test_what_the_crew_mends_keeps_the_number_it_was_not_shown(told, world, as_person):
    row, client = told["applications"], as_person(world.crew)
    url = reverse("records:edit", args=["alder-hill", "applications", row.pk])
    assert "NE-4711" not in client.get(url).content.decode()
    sent = typed("applications", world.ours, method="boom", applicator_licence="X")
    assert client.post(url, sent).status_code == 302
    row.refresh_from_db()
    assert (row.method, row.applicator_licence) == ("boom", "NE-4711")


@pytest.mark.django_db
def test_the_crew_may_still_write_its_own_number_down(world, as_person):
    client = as_person(world.crew)
    url = reverse("records:new", args=["alder-hill", "applications"])
    sent = typed("applications", world.ours, applicator_licence="NE 9")
    assert client.post(url, sent).status_code == 302
    assert Application.objects.filter(applicator_licence="NE 9").exists()


@pytest.mark.django_db
def test_a_change_of_a_private_field_is_told_without_it(told, world, as_person):
    url = reverse(
        "records:edit", args=["alder-hill", "suppliers", told["suppliers"].pk]
    )
    sent = {"name": "Cross Creek", "part": "contractor", "licence": "C-13"}
    assert as_person(world.owner).post(url, sent).status_code == 302
    assert Supplier.objects.get(pk=told["suppliers"].pk).licence == "C-13"
    assert "C-13" in page(as_person(world.owner), "changes")
    seen = page(as_person(world.crew), "changes")
    assert "Cross Creek" in seen
    assert "C-13" not in seen


@pytest.mark.django_db
def test_licences_and_their_papers_are_shut_to_the_crew(world, as_person):
    row = ApplicatorLicenceFactory(
        farm=world.farm, written_by=world.owner, until=dt.date(2027, 5, 1)
    )
    paper = AttachmentFactory(
        farm=world.farm, noun="applicatorlicence", object_id=row.pk
    )
    at = reverse("records:attachment", args=["alder-hill", paper.client_key])
    listed = reverse("records:list", args=["alder-hill", "applicator-licences"])
    for person, status in (
        (world.owner, 200),
        (world.inspector, 200),
        (world.crew, 403),
    ):
        client = as_person(person)
        assert client.get(at).status_code == status
        assert client.get(listed).status_code == status


@pytest.mark.django_db
def test_changes_of_licences_are_not_listed_for_the_crew(
    world, owner_client, as_person
):
    url = reverse("records:new", args=["alder-hill", "applicator-licences"])
    sent = typed("applicator-licences", world.ours, holder="Odd Name")
    assert owner_client.post(url, sent).status_code == 302
    assert "Odd Name" in page(owner_client, "changes")
    assert "Odd Name" not in page(as_person(world.crew), "changes")


@pytest.mark.django_db
def test_a_licence_that_ends_before_it_begins_is_refused(world, owner_client):
    url = reverse("records:new", args=["alder-hill", "applicator-licences"])
    sent = typed("applicator-licences", world.ours, until="2024-12-31")
    answer = owner_client.post(url, sent)
    assert answer.context["form"].errors["until"] == [
        "It would be over before it begins."
    ]


@pytest.mark.django_db
@pytest.mark.parametrize(
    ("told", "beside"),
    [
        ({"non_gmo": "test"}, "non_gmo_on"),
        ({"non_gmo_on": "2026-02-01"}, "non_gmo"),
        ({"non_gmo": "test", "non_gmo_on": "2099-01-01"}, "non_gmo_on"),
    ],
)
def test_a_statement_has_its_day_and_a_day_its_statement(
    told, beside, world, owner_client
):
    url = reverse("records:new", args=["alder-hill", "seed-lots"])
    answer = owner_client.post(url, typed("seed-lots", world.ours, **told))
    assert list(answer.context["form"].errors) == [beside]
