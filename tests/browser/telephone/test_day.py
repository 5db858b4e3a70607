"""A day in the field with a telephone: light, quick, and whole in the book."""

import time

import pytest
from django.urls import reverse
from django.utils import timezone

from farm.models import Change, Role, User
from farm.sharing import invite
from records.models import Attachment, Planting
from tests.browser.driving import CHROMIUM
from tests.browser.telephone.phone import (
    QUEUE,
    WORDS,
    day_of,
    form_of,
    kept_day,
    press,
    sent,
    shot,
    write_seen,
    write_sown,
)
from tests.factories import DutyFactory, PlantingFactory, SeedLineFactory
from tests.records.test_attachments import picture

pytestmark = [
    pytest.mark.django_db(transaction=True),
    pytest.mark.skipif(not CHROMIUM, reason="chromium is not on this machine"),
]


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


SLOW = {
    "offline": False,
    "latency": 300,
    "downloadThroughput": 1_600_000 / 8,
    "uploadThroughput": 750_000 / 8,
}


WEIGHT = """[...performance.getEntriesByType("navigation"),
  ...performance.getEntriesByType("resource")]
  .reduce((sum, one) => sum + one.transferSize, 0)"""


def test_pages_of_the_crew_are_small_and_quick_after_the_first_visit(place, phone):
    context = phone(place.crew, service_workers="block")
    page = context.new_page()
    page.goto(day_of(place))
    line = context.new_cdp_session(page)
    line.send("Network.enable")
    line.send("Network.emulateNetworkConditions", SLOW)
    line.send("Emulation.setCPUThrottlingRate", {"rate": 4})
    for address in (day_of(place), form_of(place, "sow")):
        took = []
        # Whatever else the machine does is not the page's: the best of three counts.
        for _ in range(3):
            begun = time.monotonic()
            page.goto(address, wait_until="load")
            took.append(time.monotonic() - begun)
        told = page.evaluate(WEIGHT)
        print(f"{address}: {told} bytes, {min(took):.2f} s at 3G")  # noqa: T201
        assert told <= 60_000
        assert min(took) <= 2


def test_a_planned_mix_is_sown_without_signal_from_its_duty(place, phone):
    planned = {"sown_on": None, "planned_on": place.today, "line": None}
    plan = PlantingFactory(farm=place.farm, field=place.strips[0], **planned)
    for name, share in (("Oats", 0.7), ("Vetch", 0.3)):
        SeedLineFactory(planting=plan, kind__name=name, share=share, seed_kg=9)
    days = {"earliest_on": place.today, "latest_on": place.today}
    what = {"what": "sow", "who_for": place.crew, "field": plan.field, **days}
    DutyFactory(farm=place.farm, planting=plan, **what)
    context = phone(place.crew)
    page = kept_day(context, place)
    context.set_offline(True)
    page.click("#duties ~ * a.button")
    page.wait_for_selector("details[open] [name=share1]")
    shot(page, "crew-6-mix")
    press(page)
    page.wait_for_selector(QUEUE)
    context.set_offline(False)
    page.click("#queue-send button")
    sent(page)
    sown = Planting.objects.on(place.farm).get(field=plan.field, sown_on=place.today)
    told = sown.lines.order_by("pk").values_list("kind__name", "share", "seed_kg")
    near = [pytest.approx(kg, rel=0.01) for kg in (9, 9)]
    assert list(told) == [("Oats", 0.7, near[0]), ("Vetch", 0.3, near[1])]


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
