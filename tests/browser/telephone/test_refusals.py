"""What is refused is told, kept, mended or given up."""

import datetime as dt
import re
import time

import pytest
from django.utils import timezone

from records.models import Observation
from tests.browser.driving import CHROMIUM
from tests.browser.telephone.phone import (
    DAY,
    QUEUE,
    day_of,
    form_of,
    kept_day,
    press,
    sent,
    shot,
    titles,
    write_seen,
)

pytestmark = [
    pytest.mark.django_db(transaction=True),
    pytest.mark.skipif(not CHROMIUM, reason="chromium is not on this machine"),
]


def test_a_telephone_a_day_ahead_is_told_and_its_entry_is_mended(place, phone):
    context = phone(place.crew)
    page = kept_day(context, place)
    ahead = dt.datetime.combine(place.today + DAY, dt.time(12), dt.UTC)
    context.clock.set_fixed_time(ahead)
    context.set_offline(True)
    write_seen(page, place, note="By the gate")
    assert (place.today + DAY).isoformat() in titles(page, 1)[0]
    context.set_offline(False)
    page.click("#queue-send button")
    page.wait_for_selector(f"{QUEUE} .errors li")
    assert "This day is still to come." in page.inner_text(f"{QUEUE} .errors")
    page.click(f"{QUEUE} summary")
    assert "By the gate" in page.inner_text(QUEUE)
    shot(page, "crew-refused")
    page.click("[data-part=mend]")
    page.wait_for_selector("#errors li")
    assert page.input_value(f"[name=at{place.stand.pk}-notes]") == "By the gate"
    page.fill("[name=seen_on]", place.today.isoformat())
    press(page)
    page.wait_for_url(f"**{day_of(place)}")
    sent(page)
    (one,) = Observation.objects.all()
    assert (one.seen_on, one.notes) == (place.today, "By the gate")
    assert one.written_at.date() == timezone.now().date()


def test_a_note_of_ten_million_letters_is_told_kept_and_given_up(place, phone):
    page = kept_day(phone(place.crew), place)
    at = f"at{place.stand.pk}"
    page.goto(form_of(place, "see"))
    page.check(f'.place input[value="{place.stand.pk}"]')
    page.select_option("[name=seen]", "bloom")
    page.fill(f"[name={at}-bloom_share]", "30")
    # Drawing so much text takes a browser without a screen very long.
    page.evaluate(
        f"const box = document.forms.entry['{at}-notes'];"
        "box.hidden = true; box.value = 'a'.repeat(1e7)"
    )
    press(page)
    page.wait_for_selector("#errors li")
    assert "too large" in page.inner_text("#errors")
    page.goto(day_of(place))
    page.wait_for_selector(f"{QUEUE} .errors li")
    page.evaluate("window.confirm = () => true")
    page.click("[data-part=drop]")
    page.wait_for_selector(QUEUE, state="detached")
    assert Observation.objects.count() == 0


def test_a_form_kept_since_yesterday_opens_with_the_day_of_the_server(place, phone):
    context = phone(place.crew, service_workers="block")
    ahead = dt.datetime.combine(place.today + DAY, dt.time(12), dt.UTC)
    context.clock.set_fixed_time(ahead)
    today, before = place.today.isoformat(), (place.today - DAY).isoformat()

    def old(route):
        found = route.fetch()
        page = re.sub(
            r'data-at="[^"]*', f'data-at="{before}T06:00:00+00:00', found.text()
        )
        route.fulfill(response=found, body=page.replace(f'"{today}"', f'"{before}"'))

    page = context.new_page()
    page.route("**/crew/see/", old)
    page.goto(form_of(place, "see"))
    assert page.get_attribute("[name=seen_on]", "value") == before
    # What is typed in a box is no attribute, and the page's policy forbids eval.
    end = time.monotonic() + 15
    while page.input_value("[name=seen_on]") != today and time.monotonic() < end:
        time.sleep(0.05)
    assert page.input_value("[name=seen_on]") == today
