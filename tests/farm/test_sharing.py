"""Who comes in, by what link, what they may do, and how they part."""

import datetime as dt
import re

import pytest
from django.core import mail
from django.test import Client
from django.urls import resolve, reverse
from django.utils import timezone

from farm import roles, sharing
from farm.models import Invitation, Role, User
from farm.models.invitations import sealed
from tests.addresses import addresses
from tests.factories import MembershipFactory, UserFactory

WORDS = "a stony field in May"
NEW = {"email": "Hand@Example.org", "name": "Hand", "password": WORDS}


@pytest.fixture
def at(world):
    return lambda name, *more: reverse(name, args=[world.farm.slug, *more])


@pytest.fixture
def invited(owner_client, at):
    """A link made on the page, as the owner copies it."""

    def made(**over):
        typed = {"name": "Hand", "email": "", "role": "crew", **over}
        page = owner_client.post(at("invite"), typed).content.decode()
        return re.search(r'value="http://testserver(/come-in/[^"]+)"', page)[1]

    return made


def token_of(link):
    return link.split("/")[2]


def test_a_link_is_shown_once_and_kept_as_a_digest_only(owner_client, invited, at):
    token = token_of(invited())
    row = Invitation.objects.get()
    assert row.token_hash == sealed(token)
    assert token not in str(Invitation.objects.values())
    assert token not in owner_client.get(at("people")).content.decode()
    assert mail.outbox == []


def test_a_link_is_sent_where_letters_are_sent(invited, settings):
    settings.MAIL_IS_SET_UP = True
    link = invited(email="hand@example.org")
    (letter,) = mail.outbox
    assert letter.to == ["hand@example.org"]
    assert link in letter.body


def test_a_name_cannot_write_into_the_head_of_a_letter(world, invited, settings):
    settings.MAIL_IS_SET_UP = True
    User.objects.filter(pk=world.owner.pk).update(name="A\nBcc: x@example.org")
    invited(email="hand@example.org")
    assert "\n" not in mail.outbox[0].subject


def test_a_newcomer_makes_an_account_and_is_in(world, invited):
    client, link = Client(), invited()
    assert "Alder Hill" in client.get(link).content.decode()
    answer = client.post(link, NEW, follow=True)
    assert answer.redirect_chain == [("/farms/alder-hill/today/", 302)]
    hand = User.objects.get(email="hand@example.org")
    assert hand.check_password(WORDS)
    assert hand.memberships.get().role == Role.CREW
    used = Invitation.objects.get()
    assert (used.used_by, used.state(timezone.now())) == (hand, "used")


def test_a_person_known_here_is_linked_and_has_two_farms(world, as_person, invited):
    client, link = as_person(world.stranger), invited(role="manager")
    assert "You are signed in as" in client.get(link).content.decode()
    client.post(link)
    home = client.get("/").content.decode()
    assert "Alder Hill" in home
    assert "Birch Flat" in home


def test_a_used_link_opens_nothing_for_another_and_leads_its_own_person_home(invited):
    first, link = Client(), invited()
    first.post(link, NEW)
    second = Client().post(link, {**NEW, "email": "other@example.org"})
    assert second.status_code == 410
    assert "It has been used" in second.content.decode()
    assert not User.objects.filter(email="other@example.org").exists()
    assert first.get(link).url == "/farms/alder-hill/"


def test_a_link_that_ran_out_was_taken_back_or_made_up_says_so(
    owner_client, invited, at
):
    link = invited()
    row = Invitation.objects.get()
    owner_client.post(at("invitation-revoke", row.pk))
    answer = Client().get(link)
    assert (answer.status_code, b"taken it back" in answer.content) == (410, True)
    late = timezone.now() - dt.timedelta(seconds=1)
    Invitation.objects.update(revoked_at=None, expires_at=late)
    answer = Client().post(link, NEW)
    assert (answer.status_code, b"time has run out" in answer.content) == (410, True)
    answer = Client().get("/come-in/forged-token/")
    assert (answer.status_code, b"not one of ours" in answer.content) == (404, True)


def test_a_link_made_for_one_address_opens_for_no_other(world, as_person, invited):
    link = invited(email="hand@example.org")
    page = as_person(world.stranger).post(link).content.decode()
    assert "made for another e-mail address" in page
    answer = Client().post(link, {**NEW, "email": "other@example.org"})
    assert answer.context["form"].errors["email"]
    assert Invitation.objects.get().used_at is None


def test_two_tabs_use_a_link_once(world, invited):
    row = sharing.known_by(token_of(invited()))
    sharing.accept(row, user=world.stranger, now=timezone.now())
    with pytest.raises(sharing.RefusalError, match="used or taken back"):
        sharing.accept(row, user=UserFactory(), now=timezone.now())


def test_an_account_that_exists_is_asked_to_sign_in_first(world, invited):
    link = invited()
    answer = Client().post(link, {**NEW, "email": world.stranger.email})
    assert "Sign in with it first" in str(answer.context["form"].errors["email"])
    assert not world.farm.memberships.filter(user=world.stranger).exists()


@pytest.mark.parametrize(
    ("over", "box"),
    [
        ({"name": ""}, "name"),
        ({"name": "\u200b\u202e"}, "name"),
        ({"email": "nobody"}, "email"),
        ({"role": "king"}, "role"),
        ({"until": "2001-01-01"}, "until"),
        ({"role": "inspector"}, "until"),
        ({"role": "owner", "until": "2099-12-31"}, "until"),
    ],
)
def test_an_invitation_that_cannot_be_is_refused(over, box, owner_client, at):
    typed = {"name": "Hand", "role": "crew", **over}
    answer = owner_client.post(at("invite"), typed)
    assert answer.context["form"].errors[box]
    assert not Invitation.objects.exists()


def test_nobody_is_invited_who_is_here(owner_client, world, at):
    typed = {"email": world.crew.email.upper(), "name": "Crew", "role": "owner"}
    answer = owner_client.post(at("invite"), typed)
    assert answer.context["form"].errors["email"]


def test_the_last_owner_can_neither_leave_nor_be_made_less(owner_client, world, at):
    mine = world.owner.memberships.get()
    page = owner_client.post(at("leave"), follow=True).content.decode()
    assert "A farm needs an owner" in page
    answer = owner_client.post(at("member", mine.pk), {"role": "crew"})
    assert answer.context["form"].errors["role"]
    owner_client.post(at("member-end", mine.pk))
    mine.refresh_from_db()
    assert (mine.role, mine.until) == (Role.OWNER, None)


def test_a_farm_is_handed_over_and_its_giver_may_then_leave(
    owner_client, world, as_person, at
):
    taker = world.manager.memberships.get()
    owner_client.post(at("hand-over", taker.pk))
    assert world.manager.memberships.get().role == Role.OWNER
    assert world.owner.memberships.get().role == Role.MANAGER
    owner_client.post(at("leave"))
    assert owner_client.get(at("farm")).status_code == 404


def test_who_left_cannot_come_in_and_their_name_stays(owner_client, world, at):
    hand = Client()
    hand.force_login(world.crew)
    hand.post(at("leave"))
    assert hand.get(at("farm")).status_code == 404
    page = owner_client.get(at("people")).content.decode()
    assert "Crew" in page
    assert "not on the farm" in page


def test_who_left_comes_back_by_a_new_link_to_the_same_line(world, as_person, invited):
    member, today = world.crew.memberships.get(), timezone.now().date()
    sharing.part(member, today=today)
    as_person(world.crew).post(
        invited(
            role="inspector",
            until="2099-12-31",
            sees_from="2026-01-01",
            sees_to="2026-12-31",
        )
    )
    back = world.crew.memberships.get()
    assert (back.pk, back.role, back.since) == (member.pk, "inspector", member.since)


def test_an_owner_makes_a_link_for_a_forgotten_password(owner_client, world, at):
    member = world.crew.memberships.get()
    page = owner_client.post(at("member-password", member.pk)).content.decode()
    link = re.search(r'value="http://testserver([^"]+)"', page)[1]
    client = Client()
    form = client.get(link, follow=True)
    typed = {"new_password1": WORDS, "new_password2": WORDS}
    client.post(form.redirect_chain[-1][0], typed)
    assert User.objects.get(pk=world.crew.pk).check_password(WORDS)
    again = Client().get(link, follow=True).content.decode()
    assert "has been used" in again


def test_no_owner_opens_an_account_that_reaches_beyond_their_farm(
    owner_client, world, at
):
    member = world.crew.memberships.get()
    MembershipFactory(farm=world.theirs.farm, user=world.crew, role=Role.CREW)
    answer = owner_client.post(at("member-password", member.pk))
    assert answer.status_code == 302
    other = MembershipFactory(farm=world.farm, role=Role.OWNER)
    assert not sharing.may_reset(other, by=world.owner)


def test_the_page_of_people_shows_the_table_the_door_follows(world, as_person, at):
    client = as_person(world.crew)
    page = client.get(at("people")).content.decode()
    for right in roles.RIGHTS:
        assert str(right.words) in page
    assert world.owner.email not in page


@pytest.mark.parametrize("right", roles.RIGHTS, ids=lambda right: right.address)
def test_each_line_of_the_table_is_what_the_door_lets_through(right, world):
    place = next(one for one in addresses() if one.name == right.address)
    view = resolve(place.at(world.ours).partition("?")[0]).func
    assert view.door == right.roles
