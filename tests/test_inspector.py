"""An inspector invited to a period: what opens, what does not, and what is noted."""

import datetime as dt

import pytest
from django.urls import reverse

from farm.models import Look, Role
from farm.models.invitations import sealed
from farm.roles import INSPECTED
from farm.writing import review
from records.looks_said import SAID, look_said
from records.models import Planting
from tests.addresses import addresses
from tests.factories import (
    ApplicationFactory,
    AttachmentFactory,
    HarvestLotFactory,
    InvitationFactory,
    MembershipFactory,
    PlantingFactory,
    SeedLotFactory,
    TerminationFactory,
)

OF_A_FARM = [one for one in addresses() if one.is_of_a_farm]
FIRST, LAST = dt.date(2026, 1, 1), dt.date(2026, 12, 31)
BEFORE, AFTER = dt.date(2025, 6, 1), dt.date(2027, 6, 1)


@pytest.fixture
def visit(world):
    """The invitation: a year to see, and a long time to see it in."""
    return MembershipFactory(
        farm=world.farm,
        user__name="Philippa",
        role=Role.INSPECTOR,
        since=dt.date(2020, 1, 1),
        until=dt.date(2100, 1, 1),
        sees_from=FIRST,
        sees_to=LAST,
    )


@pytest.fixture
def client_of(visit, as_person):
    return as_person(visit.user)


def page_of(noun, row):
    return reverse("records:page", args=["alder-hill", noun, row.pk])


@pytest.mark.django_db
@pytest.mark.parametrize("place", OF_A_FARM, ids=str)
def test_nothing_opens_but_what_an_inspector_is_to_read(place, world, client_of):
    if place.name in INSPECTED:
        return
    assert client_of.get(place.at(world.ours)).status_code in {403, 405}
    assert client_of.post(place.at(world.ours)).status_code in {403, 405}


@pytest.mark.django_db
def test_all_that_is_opened_has_an_address(world):
    assert {place.name for place in OF_A_FARM} >= INSPECTED


@pytest.mark.django_db
@pytest.mark.parametrize(
    "name", ["season", "findings", "packet", "balances", "changes-since"]
)
def test_papers_open_of_seasons_within_the_period_only(name, client_of):
    told = [
        client_of.get(reverse(f"reports:{name}", args=["alder-hill", year])).status_code
        for year in (2025, 2026, 2027)
    ]
    assert told == [404, 200, 404]


@pytest.mark.django_db
def test_a_record_from_outside_the_period_is_not_there(world, client_of, owner_client):
    for day, status in ((BEFORE, 404), (FIRST, 200), (AFTER, 404)):
        row = ApplicationFactory(farm=world.farm, applied_on=day)
        assert client_of.get(page_of("applications", row)).status_code == status
        assert owner_client.get(page_of("applications", row)).status_code == 200


@pytest.mark.django_db
def test_a_stand_sown_before_the_period_is_seen_while_it_stood_in_it(world, client_of):
    stands = PlantingFactory(farm=world.farm, sown_on=BEFORE)
    over = PlantingFactory(farm=world.farm, sown_on=BEFORE)
    TerminationFactory(
        farm=world.farm,
        planting=over,
        ended_on=dt.date(2025, 8, 1),
        area_m2=over.area_m2,
        outcome="ended",
    )
    assert client_of.get(page_of("plantings", stands)).status_code == 200
    assert client_of.get(page_of("plantings", over)).status_code == 404
    assert Planting.objects.filter(pk=over.pk).exists()


@pytest.mark.django_db
def test_seed_bought_before_the_period_is_seen_and_seed_bought_after_is_not(
    world, client_of
):
    told = [
        client_of.get(
            page_of("seed-lots", SeedLotFactory(farm=world.farm, received_on=day))
        ).status_code
        for day in (BEFORE, AFTER)
    ]
    assert told == [200, 404]


@pytest.mark.django_db
@pytest.mark.parametrize("name", ["list", "table-csv"])
def test_lists_and_tables_hold_the_period_only(name, world, client_of):
    HarvestLotFactory(farm=world.farm, code="OLD-1", harvested_on=BEFORE)
    HarvestLotFactory(farm=world.farm, code="SEEN-1", harvested_on=FIRST)
    page = client_of.get(
        reverse(f"records:{name}", args=["alder-hill", "harvest-lots"])
    )
    told = b"".join(page) if page.streaming else page.content
    assert b"SEEN-1" in told
    assert b"OLD-1" not in told


@pytest.mark.django_db
def test_a_paper_is_seen_with_its_record_or_not_at_all(world, client_of):
    row = ApplicationFactory(farm=world.farm, applied_on=BEFORE)
    paper = AttachmentFactory(
        farm=world.farm, noun="application", object_id=row.pk, taken_on=FIRST
    )
    at = reverse("records:attachment", args=["alder-hill", paper.client_key])
    assert client_of.get(at).status_code == 404


@pytest.mark.django_db
def test_a_lot_from_outside_the_period_cannot_be_picked_to_trace(world, client_of):
    old = HarvestLotFactory(farm=world.farm, code="OLD-2", harvested_on=BEFORE)
    at = reverse("reports:trace", args=["alder-hill", "harvest-lots", old.pk])
    assert client_of.get(at).status_code == 404
    chosen = client_of.get(reverse("reports:trace-choose", args=["alder-hill"]))
    assert "OLD-2" not in chosen.content.decode()


@pytest.mark.django_db
def test_a_balance_of_other_days_does_not_open(client_of):
    at = reverse("reports:balances", args=["alder-hill", 2026])
    other = client_of.get(at, {"first": "2025-01-01", "last": "2026-06-30"})
    assert other.status_code == 404
    half = client_of.get(at, {"first": "2026-01-01", "last": "2026-06-30"})
    assert half.status_code == 200


@pytest.mark.django_db
@pytest.mark.parametrize("place", OF_A_FARM, ids=str)
def test_no_page_of_an_inspector_tells_an_e_mail(place, world, client_of):
    if place.name not in INSPECTED or (place.noun and place.noun != "harvest-lots"):
        return
    page = client_of.get(place.at(world.ours))
    if page.streaming or page.status_code != 200:
        return
    told = page.content.decode(errors="ignore")
    for member in world.farm.memberships.select_related("user"):
        assert member.user.email not in told


@pytest.mark.django_db
def test_the_history_links_no_record_that_is_not_opened(world, client_of, owner_client):
    seen, unseen = (
        HarvestLotFactory(farm=world.farm, harvested_on=day) for day in (FIRST, AFTER)
    )
    for row in (seen, unseen):
        noon = dt.datetime.combine(FIRST, dt.time(12), dt.UTC)
        review(row, by=world.owner, now=noon)
    at = reverse("records:changes", args=["alder-hill"])
    told = client_of.get(at).content.decode()
    assert page_of("harvest-lots", seen) in told
    assert page_of("harvest-lots", unseen) not in told
    assert page_of("harvest-lots", unseen) in owner_client.get(at).content.decode()


@pytest.mark.django_db
def test_the_map_shows_the_land_as_it_was_on_the_last_day_opened(client_of):
    page = client_of.get(reverse("reports:map", args=["alder-hill"]))
    assert page.context["land"].on <= LAST


@pytest.mark.django_db
def test_every_look_is_noted_for_the_owner(world, client_of, owner_client):
    at = reverse("reports:findings", args=["alder-hill", 2026])
    client_of.get(at)
    look = Look.objects.filter(farm=world.farm).latest("pk")
    assert (str(look.by), look.path) == ("Philippa", at)
    page = owner_client.get(reverse("looks", args=["alder-hill"])).content.decode()
    assert "Philippa" in page and at in page
    assert ">Findings 2026</a>" in page


@pytest.mark.django_db
@pytest.mark.parametrize(
    ("since", "until", "said"),
    [
        (dt.date(2020, 1, 1), dt.date(2020, 2, 1), "ended on 1 February 2020"),
        (dt.date(2100, 1, 1), None, "begin on 1 January 2100"),
    ],
)
def test_an_inspector_whose_days_are_over_or_to_come_is_told_so(
    since, until, said, visit, client_of
):
    visit.since, visit.until = since, until
    visit.save()
    assert client_of.get(reverse("farm", args=["alder-hill"])).status_code == 404
    told = client_of.get(reverse("home")).content.decode()
    assert said in told
    assert "You are not on any farm yet" not in told


def test_every_page_an_inspector_may_open_has_a_name_in_the_list_of_looks():
    passed_on = {"reports:changes-now", "reports:findings-now"}
    presses = {"reports:print-begin", "reports:print-stop"}
    assert set(SAID) == INSPECTED - passed_on - presses
    lot = reverse("records:page", args=["alder-hill", "harvest-lots", 7])
    assert look_said(f"{lot}?x=1") == "One harvest lot, number 7"
    assert look_said("/no/such/<i>") == "/no/such/<i>"


@pytest.mark.django_db
@pytest.mark.parametrize(
    ("first", "last", "sentence"),
    [
        ("", "", "Say which days the inspector is to see."),
        ("2026-12-31", "2026-01-01", "The period ends before it begins."),
        ("2026-02-01", "2026-11-30", "No whole season lies in this period"),
        ("2000-01-01", "2026-12-31", "Open ten years at most."),
        ("9990-01-01", "9999-12-31", "The books begin in 1900 and end in 2199."),
    ],
)
def test_an_invitation_without_a_whole_season_is_refused(
    first, last, sentence, world, owner_client
):
    sent = {"name": "Philippa", "role": "inspector", "until": "2100-01-01"}
    sent |= {"sees_from": first, "sees_to": last}
    before = world.farm.invitations.count()
    page = owner_client.post(reverse("invite", args=["alder-hill"]), sent)
    assert sentence in page.content.decode()
    assert 'value="Philippa"' in page.content.decode()
    assert world.farm.invitations.count() == before


@pytest.mark.django_db
def test_the_period_comes_with_the_invitation_and_goes_with_the_role(
    world, owner_client, as_person
):
    token = "a-token-of-the-inspector"
    InvitationFactory(
        farm=world.farm,
        role=Role.INSPECTOR,
        email="",
        until=dt.date(2100, 1, 1),
        sees_from=FIRST,
        sees_to=LAST,
        token_hash=sealed(token),
    )
    as_person(world.stranger).post(reverse("come-in", args=[token]))
    member = world.farm.memberships.get(user=world.stranger)
    assert member.period == (FIRST, LAST)
    at = reverse("member", args=["alder-hill", member.pk])
    owner_client.post(at, {"role": "crew", "sees_from": "2026-01-01"})
    member.refresh_from_db()
    assert (member.role, member.sees_from, member.sees_to) == ("crew", None, None)


@pytest.mark.django_db
def test_an_inspector_without_days_sees_the_season_they_came_in_and_no_other(
    world, owner_client, as_person
):
    """Those invited before there were days to set: the least that is of use."""
    one = MembershipFactory(
        farm=world.farm, role=Role.INSPECTOR, since=dt.date(2025, 6, 1), until=None
    )
    assert one.period == (dt.date(2025, 1, 1), dt.date(2025, 12, 31))
    client, at = as_person(one.user), "reports:season"
    told = [
        client.get(reverse(at, args=["alder-hill", year])).status_code
        for year in (2024, 2025, 2026)
    ]
    assert told == [404, 200, 404]
    assert client.get(reverse("people", args=["alder-hill"])).status_code == 403
    page = owner_client.get(reverse("people", args=["alder-hill"])).content.decode()
    assert "no days were set, so only the season they came in" in page
    form = owner_client.get(reverse("member", args=["alder-hill", one.pk]))
    assert "No days were set for this inspector" in form.content.decode()
