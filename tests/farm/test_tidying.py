"""The door forgets: attempts, visits and links are not kept for ever."""

import datetime as dt

import pytest
from axes.models import AccessAttempt
from django.utils import timezone

from farm.models import Invitation, SignIn
from farm.tidying import clear_door

pytestmark = pytest.mark.django_db

MONTH = dt.timedelta(days=31)


def attempt(name, when):
    row = AccessAttempt.objects.create(username=name, failures_since_start=1)
    AccessAttempt.objects.filter(pk=row.pk).update(attempt_time=when)


def link(world, name, **told):
    now = timezone.now()
    row = {"made_at": now - 2 * MONTH, "expires_at": now + MONTH} | told
    return Invitation.objects.create(
        farm=world.farm,
        name=name,
        role="crew",
        token_hash=name,
        made_by=world.owner,
        **row,
    )


def test_the_door_forgets_after_a_month_and_keeps_who_let_whom_in(world):
    now = timezone.now()
    attempt("old", now - MONTH)
    attempt("new", now - dt.timedelta(days=29))
    for key, days in (("gone", -1), ("here", 1)):
        SignIn.objects.create(
            session_key=key,
            session_data="",
            expire_date=now + dt.timedelta(days=days),
            user=world.owner,
        )
    link(world, "open")
    link(world, "ran-out", expires_at=now - MONTH)
    link(world, "taken-back", revoked_at=now - MONTH)
    link(
        world,
        "used",
        expires_at=now - MONTH,
        used_at=now - MONTH,
        used_by=world.crew,
    )
    before = Invitation.objects.count()
    assert clear_door(now) == 4
    assert [row.username for row in AccessAttempt.objects.all()] == ["new"]
    assert not SignIn.objects.filter(session_key="gone").exists()
    assert SignIn.objects.filter(session_key="here").exists()
    assert Invitation.objects.count() == before - 2
    assert clear_door(now) == 0
