"""A day in the field with a telephone: no signal, lost answers, other people."""

import datetime as dt
import time
import types

import pytest
from django.conf import settings
from django.contrib.sessions.models import Session
from django.test import Client, override_settings
from django.urls import reverse
from django.utils import timezone
from pytest_django.live_server_helper import LiveServer

from farm.models import Change, Role, User
from farm.models.sign_ins import SignIn
from farm.sharing import invite
from records.models import Attachment, Observation, Planting, SentEntry
from tests.browser.driving import CHROMIUM, SCREENSHOTS, Server, open_browser
from tests.factories import (
    FarmFactory,
    FieldFactory,
    KindFactory,
    MembershipFactory,
    PlantingFactory,
    SeedLotFactory,
)
from tests.records.test_attachments import picture

pytestmark = [
    pytest.mark.django_db(transaction=True),
    pytest.mark.skipif(not CHROMIUM, reason="chromium is not on this machine"),
    pytest.mark.skipif(
        settings.DATABASES["default"]["ENGINE"].endswith("postgresql"),
        reason="a telephone's day is tried on SQLite; test_crew_entry runs on both",
    ),
]
PHONE = {
    "viewport": {"width": 360, "height": 740},
    "has_touch": True,
    "is_mobile": True,
    "locale": "en-US",
}
WORDS = "a stony field in May"
DAY = dt.timedelta(days=1)
QUEUE = "#queue-list li"


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
    Server.loses_answers = False
    for context in made:
        context.close()
    # What the browser asked for last is answered before the tables are emptied.
    time.sleep(0.2)
    with Server.turn:
        pass
    assert errors == []


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


def write_cut(page, place, photo=None):
    page.goto(form_of(place, "end"))
    page.check(f'.place input[value="{place.stand.pk}"]')
    page.select_option("[name=method]", "mown")
    page.select_option("[name=residue]", "on_top")
    if photo:
        told = {"name": "cut.jpg", "mimeType": "image/jpeg", "buffer": photo}
        page.set_input_files(f"[name=photo{place.stand.pk}]", told)
    press(page)
    page.wait_for_url(f"**{day_of(place)}")


def titles(page):
    return page.locator(f"{QUEUE} [data-part=title]").all_inner_texts()


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


def test_entries_wait_in_order_through_a_closed_tab_and_are_sent_with_signal(
    place, phone
):
    context = phone(place.crew)
    page = kept_day(context, place)
    context.set_offline(True)
    write_sown(page, place)
    write_seen(page, place)
    page.close()
    page = context.new_page()
    page.goto(day_of(place))
    page.wait_for_selector(f"{QUEUE} >> nth=1")
    assert [one.split(" · ")[0] for one in titles(page)] == ["Sown", "Seen"]
    assert "waiting" in page.inner_text(QUEUE)
    assert SentEntry.objects.count() == 0
    for kept in ("fields", "seed-lots"):
        page.goto(reverse("records:list", args=[place.farm.slug, kept]))
        assert "No signal" not in page.title()
    page.goto(day_of(place))
    context.set_offline(False)
    page.click("#queue-send button")
    sent(page, 2)
    assert list(SentEntry.objects.order_by("pk").values_list("act", flat=True)) == [
        "sow",
        "see",
    ]
    assert Planting.objects.on(place.farm).count() == 3
    page.wait_for_selector("#mine li")


def test_an_answer_lost_after_saving_makes_no_second_record(place, phone):
    page = kept_day(phone(place.crew), place)
    Server.loses_answers = True
    write_seen(page, place)
    page.wait_for_selector(QUEUE)
    assert Observation.objects.count() == 1
    Server.loses_answers = False
    page.click("#queue-send button")
    sent(page)
    assert "1 record written down." in page.inner_text("#queue-said")
    assert Observation.objects.count() == 1


COPY = """async () => {
  const base = await new Promise((done) => {
    const asked = indexedDB.open("entries");
    asked.onsuccess = () => done(asked.result);
  });
  const rows = () => base.transaction("entries", "readwrite").objectStore("entries");
  const [one] = await new Promise((done) => {
    const asked = rows().getAll();
    asked.onsuccess = () => done(asked.result);
  });
  delete one.number;
  await new Promise((done) => { rows().add(one).onsuccess = done; });
}"""


def test_the_same_queue_sent_twice_and_from_two_tabs_stands_once(place, phone):
    context = phone(place.crew)
    page = kept_day(context, place)
    other = context.new_page()
    other.goto(day_of(place))
    context.set_offline(True)
    write_seen(page, place)
    page.wait_for_selector(QUEUE)
    page.evaluate(COPY)
    page.reload()
    page.wait_for_selector(f"{QUEUE} >> nth=1")
    context.set_offline(False)
    for tab in (page, other):
        tab.evaluate("window.dispatchEvent(new Event('online'))")
    for tab in (page, other):
        sent(tab)
    assert Observation.objects.count() == 1
    assert Change.objects.filter(noun="observation").count() == 1


def test_a_telephone_a_day_ahead_is_told_and_its_entry_is_mended(place, phone):
    context = phone(place.crew)
    page = kept_day(context, place)
    ahead = dt.datetime.combine(place.today + DAY, dt.time(12), dt.UTC)
    context.clock.set_fixed_time(ahead)
    context.set_offline(True)
    write_seen(page, place, note="By the gate")
    assert (place.today + DAY).isoformat() in titles(page)[0]
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
    assert titles(page)
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


SLOW = {"offline": False, "latency": 300, "downloadThroughput": 1_600_000 / 8}
SLOW["uploadThroughput"] = 750_000 / 8


def test_the_page_is_small_and_quick_after_the_first_visit(place, phone):
    context = phone(place.crew, service_workers="block")
    page = context.new_page()
    page.goto(day_of(place))
    line = context.new_cdp_session(page)
    line.send("Network.enable")
    line.send("Network.emulateNetworkConditions", SLOW)
    begun = time.monotonic()
    page.goto(day_of(place), wait_until="domcontentloaded")
    took = time.monotonic() - begun
    told = page.evaluate(
        "[...performance.getEntriesByType('navigation'),"
        "...performance.getEntriesByType('resource')]"
        ".reduce((sum, one) => sum + one.transferSize, 0)"
    )
    print(f"after the first visit: {told} bytes, {took:.2f} s at 3G")  # noqa: T201
    assert told <= 60_000
    # The bench is shared; the time is printed, and held loosely.
    assert took < 6


def test_a_newcomers_day_without_signal_stands_once_and_in_order_in_the_book(
    place, phone
):
    now = timezone.now()
    told = {"name": "Rosa", "role": Role.CREW, "language": "es"}
    link = invite(place.farm, by=place.owner, now=now, **told)
    context = phone(locale="es-MX")
    page = context.new_page()
    page.goto(reverse("come-in", args=[link.token]))
    assert page.get_attribute("html", "lang") == "es"
    page.fill("[name=email]", "rosa@example.org")
    page.fill("[name=name]", "Rosa")
    page.fill("[name=password]", WORDS)
    shot(page, "crew-0-invited")
    page.click("form.record button")
    page.wait_for_url(f"**{day_of(place)}")
    assert page.get_attribute("html", "lang") == "es"
    page.wait_for_selector("#keep:not(:empty)")
    shot(page, "crew-1-day")
    context.set_offline(True)
    write_sown(page, place)
    write_seen(page, place)
    write_cut(page, place, photo=picture((400, 300)))
    page.wait_for_selector(f"{QUEUE} >> nth=2")
    shot(page, "crew-2-waiting")
    page.goto(form_of(place, "see"))
    page.check(".place input >> nth=0")
    shot(page, "crew-3-form")
    context.set_offline(False)
    page.goto(day_of(place))
    sent(page, 3)
    page.wait_for_selector("#mine li >> nth=3")
    shot(page, "crew-4-sent")
    rosa = User.objects.get(email="rosa@example.org")
    wrote = Change.objects.filter(farm=place.farm, by=rosa).order_by("number")
    assert list(wrote.values_list("noun", flat=True)) == [
        "planting",
        "planting",
        "observation",
        "termination",
        "attachment",
    ]
    assert Attachment.objects.on(place.farm).count() == 1
    book = phone(place.owner).new_page()
    book.goto(reverse("records:changes", args=[place.farm.slug]))
    assert book.inner_text("main").count("Rosa") >= 4
    shot(book, "crew-5-book")
