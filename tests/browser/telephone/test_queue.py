"""What waits on a telephone is sent in order, and each entry once."""

import pytest
from django.urls import reverse

from farm.models import Change
from records.models import Observation, Planting, SentEntry
from tests.browser.driving import CHROMIUM, Server
from tests.browser.telephone.phone import (
    QUEUE,
    day_of,
    kept_day,
    sent,
    titles,
    write_seen,
    write_sown,
)

pytestmark = [
    pytest.mark.django_db(transaction=True),
    pytest.mark.skipif(not CHROMIUM, reason="chromium is not on this machine"),
]


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
    assert [one.split(" · ")[0] for one in titles(page, 2)] == ["Sown", "Seen"]
    assert "waiting" in page.inner_text(QUEUE)
    assert SentEntry.objects.count() == 0
    slug = place.farm.slug
    lists = [
        reverse("records:list", args=[slug, one]) for one in ("fields", "seed-lots")
    ]
    for kept in (*lists, reverse("records:kinds", args=[slug])):
        page.goto(kept)
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


@pytest.mark.parametrize(("dies", "stood"), [("before", 0), ("after", 1)])
def test_a_server_killed_in_mid_send_leaves_each_entry_once(place, phone, dies, stood):
    page = kept_day(phone(place.crew), place)
    Server.dies = dies
    write_seen(page, place)
    page.wait_for_selector(QUEUE)
    assert Server.dead
    assert Observation.objects.count() == stood
    Server.rises()
    page.goto(day_of(place))
    sent(page)
    assert Observation.objects.count() == 1
    assert Change.objects.filter(noun="observation").count() == 1


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
