"""Letting people in by a link, changing what they may do, and parting from them."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass
from typing import Any

from django.db import transaction
from django.utils.translation import gettext_lazy as _

from farm.models import Farm, Invitation, Membership, Role, User
from farm.models.invitations import sealed

OPEN_FOR = dt.timedelta(days=7)
DAY = dt.timedelta(days=1)


class RefusalError(Exception):
    """Something that cannot be done, with the sentence that says why."""


@dataclass(frozen=True)
class Invited:
    """A new invitation; its token is told only here."""

    invitation: Invitation
    token: str


def invite(farm: Farm, *, by: User, now: dt.datetime, **told: Any) -> Invited:
    """Make a link for one person: name, e-mail, language, role and last day."""
    row = Invitation(farm=farm, made_by=by, made_at=now, **told)
    row.expires_at = now + OPEN_FOR
    token = row.new_token()
    row.save()
    return Invited(row, token)


def known_by(token: str) -> Invitation | None:
    """The invitation of a token, whatever has become of it."""
    rows = Invitation.objects.select_related("farm", "made_by")
    found: Invitation | None = rows.filter(token_hash=sealed(token)).first()
    return found


def check(invitation: Invitation, email: str) -> None:
    """Refuse a person for whom the link was not made."""
    if invitation.email and invitation.email.lower() != email.lower():
        raise RefusalError(_("This link was made for another e-mail address."))


def revoke(invitation: Invitation, *, now: dt.datetime) -> None:
    """Take back a link that has not been used."""
    rows = Invitation.objects.filter(pk=invitation.pk, used_at=None, revoked_at=None)
    rows.update(revoked_at=now)


def accept(invitation: Invitation, *, user: User, now: dt.datetime) -> Membership:
    """Use a link up: a new member, or one who comes back to the same line."""
    check(invitation, user.email)
    with transaction.atomic():
        farm = Farm.objects.select_for_update().get(pk=invitation.farm_id)
        row = Invitation.objects.select_for_update().get(pk=invitation.pk)
        if row.state(now) != Invitation.State.OPEN:
            raise RefusalError(_("This link has been used or taken back meanwhile."))
        today = farm.today(now)
        if row.until and row.until < today:
            raise RefusalError(_("The access this link gives has ended already."))
        member = _place(farm, user, today)
        member.role, member.until = row.role, row.until
        member.sees_from, member.sees_to = row.sees_from, row.sees_to
        member.save()
        row.used_at, row.used_by = now, user
        row.save()
    return member


def accept_new(
    invitation: Invitation,
    *,
    email: str,
    name: str,
    password: str,
    now: dt.datetime,
    language: str = "",
) -> User:
    """Make an account and use the link up for it, both or neither."""
    with transaction.atomic():
        user = User.objects.create_user(email, password, name=name, language=language)
        accept(invitation, user=user, now=now)
    return user


def _place(farm: Farm, user: User, today: dt.date) -> Membership:
    found = farm.memberships.filter(user=user).first()
    if found is None:
        return Membership(farm=farm, user=user, since=today)
    if found.holds_on(today):
        raise RefusalError(_("You are on this farm already."))
    found.since = min(found.since, today)
    return found


def change(
    member: Membership,
    *,
    role: str,
    until: dt.date | None,
    today: dt.date,
    sees_from: dt.date | None = None,
    sees_to: dt.date | None = None,
) -> None:
    """Give a member another role, another last day, or another period to read."""
    with transaction.atomic():
        held = _held(member)
        if role != Role.OWNER:
            _keep_an_owner(held, today)
        held.role, held.until = role, None if role == Role.OWNER else until
        held.sees_from, held.sees_to = sees_from, sees_to
        held.save()


def part(member: Membership, *, today: dt.date) -> None:
    """End a membership now; the line stays, and so does all that was written."""
    with transaction.atomic():
        held = _held(member)
        _keep_an_owner(held, today)
        held.until = today - DAY
        held.since = min(held.since, held.until)
        held.save()


def hand_over(giver: Membership, taker: Membership, *, today: dt.date) -> None:
    """Make another member the owner, and the giver a manager."""
    with transaction.atomic():
        held, other = _held(giver), _held(taker)
        if held.pk == other.pk or not other.holds_on(today):
            raise RefusalError(_("The farm can be handed to another member only."))
        other.role, other.until = Role.OWNER, None
        other.sees_from = other.sees_to = None
        other.save()
        if held.role == Role.OWNER:
            held.role = Role.MANAGER
            held.save()


def _held(member: Membership) -> Membership:
    # Two owners who leave at the same moment must find each other.
    Farm.objects.select_for_update().get(pk=member.farm_id)
    return Membership.objects.select_related("farm").get(pk=member.pk)


def _keep_an_owner(member: Membership, today: dt.date) -> None:
    if member.role != Role.OWNER or not member.holds_on(today):
        return
    others = member.farm.memberships.on(today).filter(role=Role.OWNER, until=None)
    if not others.exclude(pk=member.pk).exists():
        raise RefusalError(
            _("A farm needs an owner. Hand it over to somebody before you part.")
        )


def may_reset(member: Membership, *, by: User) -> bool:
    """Whether an owner may make this person a link for a new password.

    The link opens the whole account, so every farm of the person's must be the
    maker's own, and no other owner's account is opened this way.
    """
    if member.role == Role.OWNER or member.user_id == by.pk:
        return False
    farms = member.user.memberships.values("farm")
    mine = by.memberships.filter(role=Role.OWNER, until=None, farm__in=farms)
    owns = member.user.memberships.filter(role=Role.OWNER).exists()
    return not owns and mine.count() == farms.count()
