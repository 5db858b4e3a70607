"""What waits on a telephone is one person's."""

import pytest
from django.contrib.sessions.models import Session

from farm.models.sign_ins import SignIn
from records.models import Observation
from tests.browser.driving import CHROMIUM
from tests.browser.telephone.phone import (
    QUEUE,
    WORDS,
    day_of,
    kept_day,
    sent,
    shot,
    sign_in,
    titles,
    write_seen,
)

pytestmark = [
    pytest.mark.django_db(transaction=True),
    pytest.mark.skipif(not CHROMIUM, reason="chromium is not on this machine"),
]


def test_a_sign_in_that_ran_out_is_asked_for_again_and_the_queue_stays(place, phone):
    context = phone(place.crew)
    page = kept_day(context, place)
    context.set_offline(True)
    write_seen(page, place)
    page.wait_for_selector(QUEUE)
    SignIn.objects.all().delete()
    Session.objects.all().delete()
    context.set_offline(False)
    page.click("#queue-send button")
    page.wait_for_selector("#queue-sign-in:not([hidden]) a")
    assert titles(page, 1)
    shot(page, "crew-sign-in-again")
    page.click("#queue-sign-in a")
    page.fill("[name=username]", "crew@example.org")
    page.fill("[name=password]", WORDS)
    page.click("form.record button")
    page.wait_for_url(f"**{day_of(place)}")
    sent(page)
    assert Observation.objects.count() == 1


def test_another_person_on_the_telephone_neither_sees_nor_sends_what_waits(
    place, phone, site
):
    context = phone(place.crew)
    page = kept_day(context, place)
    context.set_offline(True)
    write_seen(page, place)
    page.wait_for_selector(QUEUE)
    context.set_offline(False)
    context.clear_cookies()
    sign_in(context, site, place.owner)
    page.goto(day_of(place))
    page.wait_for_selector("#keep:not(:empty)")
    assert titles(page) == []
    assert page.evaluate("caches.keys()").count(f"pages-{place.crew.pk}") == 0
    assert Observation.objects.count() == 0
    context.clear_cookies()
    sign_in(context, site, place.crew)
    page.goto(day_of(place))
    sent(page)
    assert Observation.objects.get().written_by == place.crew


def test_after_signing_out_no_page_of_the_farm_is_left_on_the_telephone(place, phone):
    context = phone(place.crew)
    page = kept_day(context, place)
    page.click(".person form button")
    page.wait_for_url("**/sign-in/")
    assert not [n for n in page.evaluate("caches.keys()") if n.startswith("pages-")]
    page.go_back()
    assert "Alder Hill" not in page.inner_text("body")
    context.set_offline(True)
    page.goto(day_of(place))
    assert "No signal" in page.title()
    assert "Alder Hill" not in page.content()
