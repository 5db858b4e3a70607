"""A telephone in a browser: what is typed on it, and how its queue is seen."""

import datetime as dt
import time

from django.test import Client
from django.urls import reverse

from records.models import SentEntry
from tests.browser.driving import SCREENSHOTS, Server

PHONE = {
    "viewport": {"width": 360, "height": 740},
    "has_touch": True,
    "is_mobile": True,
    "locale": "en-US",
}


WORDS = "a stony field in May"


DAY = dt.timedelta(days=1)


QUEUE = "#queue-list li"


def sign_in(context, site, user):
    client = Client()
    client.force_login(user)
    key = client.cookies["sessionid"].value
    context.add_cookies([{"name": "sessionid", "value": key, "url": site}])


def day_of(place):
    return reverse("crew:today", args=[place.farm.slug])


def form_of(place, act):
    return reverse("records:crew-act", args=[place.farm.slug, act])


def kept_day(context, place):
    """The crew's page, once the telephone has kept it with its forms."""
    page = context.new_page()
    page.goto(day_of(place))
    page.wait_for_selector("#keep:not(:empty)")
    return page


def press(page):
    page.click("form.crew > .buttons button")


def write_seen(page, place, share="30", note=""):
    at = f"at{place.stand.pk}"
    page.goto(form_of(place, "see"))
    page.check(f'.place input[value="{place.stand.pk}"]')
    page.select_option("[name=seen]", "bloom")
    page.fill(f"[name={at}-bloom_share]", share)
    if note:
        page.fill(f"[name={at}-notes]", note)
    press(page)
    page.wait_for_url(f"**{day_of(place)}")


def write_sown(page, place):
    page.goto(form_of(place, "sow"))
    for strip in place.strips:
        page.check(f'.place input[value="{strip.pk}"]')
    page.select_option("[name=lot0]", str(place.lot.pk))
    page.fill("[name=rate0]", "40 lb/ac")
    press(page)
    page.wait_for_url(f"**{day_of(place)}")


def titles(page, at_least=0):
    """What waits to be sent, once so many entries are shown."""
    told = page.locator(f"{QUEUE} [data-part=title]")
    if at_least:
        told.nth(at_least - 1).wait_for()
    return told.all_inner_texts()


def shot(page, name):
    if SCREENSHOTS:
        page.screenshot(path=f"{SCREENSHOTS}/{name}.png", full_page=True)


def sent(page, entries=1, seconds=15):
    """Wait until the server has so many entries and the telephone none."""
    end, had = time.monotonic() + seconds, 0
    while had < entries and time.monotonic() < end:
        time.sleep(0.05)
        with Server.turn:
            had = SentEntry.objects.count()
    assert had == entries
    page.wait_for_selector(QUEUE, state="detached")
