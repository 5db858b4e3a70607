"""A browser, a site and a telephone, for each day tried."""

import time
import types

import pytest
from django.conf import settings
from django.test import override_settings
from django.utils import timezone
from pytest_django.live_server_helper import LiveServer

from farm.models import Role, User
from tests.browser.driving import Server, open_browser
from tests.browser.telephone.phone import (
    DAY,
    PHONE,
    WORDS,
    sign_in,
)
from tests.factories import (
    FarmFactory,
    FieldFactory,
    KindFactory,
    MembershipFactory,
    PlantingFactory,
    SeedLotFactory,
)


@pytest.fixture(scope="module")
def browser():
    found, close = open_browser()
    yield found
    close()


@pytest.fixture(scope="module")
def site(django_db_setup, django_db_blocker):
    chain = ["tests.browser.driving.one_at_a_time", *settings.MIDDLEWARE]
    with django_db_blocker.unblock(), override_settings(MIDDLEWARE=chain):
        server = LiveServer("localhost")
        yield server.url
        server.stop()


@pytest.fixture
def place(transactional_db):
    """A farm with a hand, two bare fields, one that is sown, and seed."""
    farm = FarmFactory(name="Alder Hill", slug="alder-hill")
    people = {}
    for role in (Role.OWNER, Role.CREW):
        user = User.objects.create_user(f"{role}@example.org", WORDS, name=role.title())
        MembershipFactory(farm=farm, user=user, role=role)
        people[role.value] = user
    today, here = farm.today(timezone.now()), {"farm": farm}
    here["written_by"] = people["owner"]
    kind = KindFactory(name="Buckwheat", slug="buckwheat")
    strips = [FieldFactory(**here, name=f"Strip {n}") for n in (1, 2)]
    stand = PlantingFactory(
        **here, field__name="River", line__kind=kind, sown_on=today - 40 * DAY
    )
    lot = SeedLotFactory(**here, kind=kind, received_on=today - 60 * DAY)
    made = {"farm": farm, "today": today, "strips": strips, "stand": stand, "lot": lot}
    return types.SimpleNamespace(**made, **people)


@pytest.fixture
def phone(browser, site):
    """A telephone of its own for every test."""
    made, errors = [], []

    def handed(user=None, **more):
        context = browser.new_context(base_url=site, **{**PHONE, **more})
        context.set_default_timeout(15_000)
        context.on("weberror", lambda error: errors.append(error.error.message))
        made.append(context)
        if user:
            sign_in(context, site, user)
        return context

    yield handed
    Server.rises()
    for context in made:
        context.close()
    # What the browser asked for last is answered before the tables are emptied.
    time.sleep(0.2)
    with Server.turn:
        pass
    assert errors == []
