"""The crew's page: duties, where to go, own entries; small, and in few questions."""

import datetime as dt
import gzip
import html
import re
from types import SimpleNamespace

import pytest
from django.urls import reverse
from django.utils import timezone

from farm.models import Role
from farm.units import M2_PER_ACRE
from reports.calc.rules.post import spread, still_closed
from reports.calc.shapes.post import Plot, Sprayed
from tests.factories import (
    ApplicationFactory,
    DutyFactory,
    FieldFactory,
    InputProductFactory,
    MembershipFactory,
    ObservationFactory,
    PlantingFactory,
    SeedLineFactory,
)

pytestmark = pytest.mark.django_db
DAY = dt.timedelta(days=1)
TODAY = dt.date(2026, 5, 1)


def square(west, side=0.002):
    low, east, high = 50.0, west + side, 50.0 + side
    ring = [[west, low], [east, low], [east, high], [west, high], [west, low]]
    return {"type": "Polygon", "coordinates": [ring]}


@pytest.fixture
def today(world):
    return world.farm.today(timezone.now())


@pytest.fixture
def crew(world, as_person):
    return as_person(world.crew)


def page(client, farm):
    return client.get(reverse("crew:today", args=[farm.slug])).content.decode()


def spray(world, field, today, **told):
    product = InputProductFactory(
        farm=world.farm, name=told.pop("name", "Soap"), type="pest", **told
    )
    return ApplicationFactory(
        farm=world.farm, field=field, product=product, applied_on=today
    )


def test_a_duty_of_mine_opens_its_form_already_filled(world, crew, today):
    stand = PlantingFactory(farm=world.farm, sown_on=today - 40 * DAY)
    told = {"earliest_on": today, "latest_on": today + DAY, "who_for": world.crew}
    DutyFactory(farm=world.farm, field=stand.field, planting=stand, what="cut", **told)
    shown = page(crew, world.farm)
    url = reverse("records:crew-act", args=[world.farm.slug, "end"])
    assert f"{url}?outcome=regrows&amp;place={stand.pk}" in shown
    form = crew.get(url, {"outcome": "regrows", "place": stand.pk}).content.decode()
    assert f'value="{stand.pk}" checked' in form
    assert '<option value="regrows" selected>' in form


def test_a_planned_mix_opens_its_form_with_all_its_seeds(world, crew, today):
    plan = PlantingFactory(
        farm=world.farm,
        sown_on=None,
        planned_on=today,
        area_m2=2 * M2_PER_ACRE,
        line=None,
    )
    for name, share, seed_kg in (("Oats", 0.7, 40.0), ("Vetch", 0.3, None)):
        told = {"share": share, "seed_kg": seed_kg, "lot": None}
        SeedLineFactory(planting=plan, kind__name=name, **told)
    told = {"earliest_on": today, "latest_on": today + DAY, "who_for": world.crew}
    DutyFactory(farm=world.farm, field=plan.field, planting=plan, what="sow", **told)
    pressed = re.search(r'href="([^"]*crew/sow/[^"]*)"', page(crew, world.farm))
    form = crew.get(html.unescape(pressed[1])).content.decode()
    boxes = dict(re.findall(r'name="((?:rate|share)\d)" value="([^"]*)"', form))
    assert boxes == {"rate0": "44.1 lb/ac", "share0": "70", "share1": "30"}
    kinds = re.findall(r'name="kind\d".*?</select>', form, re.S)
    assert ["Oats" in kinds[0], "selected>Vetch" in kinds[1]] == [True, True]
    assert '<option value="" selected>' in kinds[2]
    assert re.search(r"<details open><summary>A mix", form)


def test_a_duty_of_somebody_else_is_not_mine(world, crew, today):
    told = {"earliest_on": today, "latest_on": today, "what": "other"}
    DutyFactory(farm=world.farm, words="Mend the fence", who_for=world.owner, **told)
    DutyFactory(farm=world.farm, words="Clean the drill", **told)
    shown = page(crew, world.farm)
    assert "Mend the fence" not in shown
    assert "Clean the drill" in shown


def test_a_sprayed_field_and_its_parts_are_shut_until_the_hour(world, crew, today):
    whole = FieldFactory(farm=world.farm, name="River")
    FieldFactory(farm=world.farm, name="River west", parent=whole)
    FieldFactory(farm=world.farm, name="Hill")
    spray(world, whole, today, reentry_hours=48)
    shown = page(crew, world.farm)
    assert "Do not enter River</strong>" in shown
    assert "Do not enter River west</strong>" in shown
    free = shown.partition("May be entered")[2]
    assert "Hill" in free.partition("</details>")[0]
    assert "River" not in free.partition("</details>")[0]


def test_a_spray_without_an_interval_sends_one_to_the_label(world, crew, today):
    spray(world, FieldFactory(farm=world.farm, name="River"), today)
    assert "before you have read the label" in page(crew, world.farm)


@pytest.mark.parametrize(
    ("hour", "shut"), [("2026-05-02T01:59", True), ("2026-05-02T02:00", False)]
)
def test_the_interval_runs_from_the_end_of_the_spraying(hour, shut):
    """40 CFR 170.305: the time after the end of an application."""
    ended = dt.datetime(2026, 5, 1, 14)
    one = Sprayed(1, "River", "Soap", ended.date(), ended, 12, "A. B.")
    now = dt.datetime.fromisoformat(hour)
    assert bool(still_closed([one], now=now)) is shut


def test_a_spray_reaches_what_shares_its_ground_and_no_neighbour():
    plots = [Plot(1, "Farm", None), Plot(2, "West", 1), Plot(3, "East", 1)]
    ended = dt.datetime(2026, 5, 1, 14)
    one = Sprayed(2, "West", "Soap", ended.date(), ended, 12, "")
    assert {it.field for it in spread([one], plots)} == {"Farm", "West"}


def test_a_spray_reaches_what_is_drawn_over_its_ground_with_its_parts():
    plots = [
        Plot(1, "Bench", None, frozenset({2})),
        Plot(2, "Strip", None, frozenset({1})),
        Plot(3, "Bed of the strip", 2),
        Plot(4, "Hill", None),
    ]
    one = Sprayed(1, "Bench", "Soap", TODAY, dt.datetime(2026, 5, 1, 14), 12, "")
    reached = {it.field for it in spread([one], plots)}
    assert reached == {"Bench", "Strip", "Bed of the strip"}


def test_ground_drawn_over_a_sprayed_field_is_shut(world, crew, today):
    below = FieldFactory(farm=world.farm, name="Bench", outline=square(10.0))
    FieldFactory(farm=world.farm, name="Strip", outline=square(10.001))
    FieldFactory(farm=world.farm, name="Far", outline=square(11.0))
    spray(world, below, today, reentry_hours=48)
    shown = page(crew, world.farm)
    assert "Do not enter Strip</strong>" in shown
    assert "Do not enter Far</strong>" not in shown
    posted = crew.get(reverse("reports:post", args=[world.farm.slug])).content.decode()
    assert "Strip" in posted


def test_own_entries_can_be_mended_while_young(world, crew, today):
    stand = PlantingFactory(farm=world.farm, sown_on=today - 40 * DAY)
    url = reverse("records:crew-act", args=[world.farm.slug, "see"])
    typed = {"seen_on": today, "seen": "bloom", "place": stand.pk}
    crew.post(url, {**typed, f"at{stand.pk}-bloom_share": "30"})
    shown = page(crew, world.farm).partition("My last entries")[2]
    (one,) = world.farm.observations.filter(written_by=world.crew, planting=stand)
    at = [world.farm.slug, "observations", one.pk]
    assert reverse("records:edit", args=at) in shown
    crew.post(reverse("records:void", args=at), {"reason": "Wrong field."})
    shown = page(crew, world.farm).partition("My last entries")[2]
    assert "voided" in shown
    assert reverse("records:edit", args=at) not in shown
    crew.post(reverse("records:undo", args=at))
    shown = page(crew, world.farm).partition("My last entries")[2]
    assert reverse("records:edit", args=at) in shown


def test_an_old_entry_is_told_but_not_mended_from_here(world, as_person):
    client = as_person(world.owner)
    shown = page(client, world.farm).partition("My last entries")[2]
    assert reverse("records:edit", args=[world.farm.slug, "x", 1])[:20] not in shown


def test_an_entry_of_an_earlier_year_is_told_with_its_year(
    world, crew, today, monkeypatch
):
    stand = PlantingFactory(farm=world.farm, sown_on=today - 40 * DAY)
    url = reverse("records:crew-act", args=[world.farm.slug, "see"])
    typed = {"seen_on": today, "seen": "bloom", "place": stand.pk}
    crew.post(url, {**typed, f"at{stand.pk}-bloom_share": "30"})
    shown = page(crew, world.farm).partition("My last entries")[2]
    assert f" {today:%Y}, " not in shown
    later = timezone.now() + 366 * DAY
    clock = SimpleNamespace(now=lambda: later)
    monkeypatch.setattr("reports.crew_views.timezone", clock)
    shown = page(crew, world.farm).partition("My last entries")[2]
    assert f" {today:%Y}, " in shown


@pytest.mark.parametrize("size", [1, 25])
def test_the_page_asks_few_questions_whatever_the_size(
    size, world, crew, today, django_assert_max_num_queries
):
    for n in range(size):
        stand = PlantingFactory(farm=world.farm, sown_on=today - 40 * DAY)
        told = {"earliest_on": today, "latest_on": today, "field": stand.field}
        DutyFactory(farm=world.farm, planting=stand, **told)
        spray(world, stand.field, today, name=f"Soap {n}", reentry_hours=12)
        ObservationFactory(farm=world.farm, planting=stand, written_by=world.crew)
    url = reverse("crew:today", args=[world.farm.slug])
    with django_assert_max_num_queries(12):
        assert crew.get(url).status_code == 200


@pytest.mark.parametrize("act", ["sow", "see", "end"])
def test_a_form_of_many_places_asks_few_questions(
    act, world, crew, today, django_assert_max_num_queries
):
    for _n in range(15):
        PlantingFactory(farm=world.farm, sown_on=today - 40 * DAY)
    url = reverse("records:crew-act", args=[world.farm.slug, act])
    with django_assert_max_num_queries(14):
        assert crew.get(url).status_code == 200


def test_the_page_goes_out_small(world, crew):
    url = reverse("crew:today", args=[world.farm.slug])
    plain = crew.get(url)
    small = crew.get(url, HTTP_ACCEPT_ENCODING="gzip")
    assert small["Content-Encoding"] == "gzip"
    assert len(gzip.decompress(small.content)) > 0.9 * len(plain.content)
    assert len(small.content) < 12_000


def test_crew_land_at_their_day_and_others_at_their_farms(world, as_person):
    start = reverse("start")
    day = reverse("crew:today", args=[world.farm.slug])
    assert as_person(world.crew).get(start).url == day
    assert as_person(world.owner).get(start).url == "/"
    MembershipFactory(farm=world.theirs.farm, user=world.crew, role=Role.CREW)
    assert as_person(world.crew).get(start).url == "/"


def test_a_telephone_is_told_what_it_needs_to_keep_the_site(world, client, crew):
    told = client.get(reverse("manifest")).json()
    assert told["display"] == "standalone"
    assert {icon["sizes"] for icon in told["icons"]} >= {"192x192", "512x512"}
    worker = client.get(reverse("worker"))
    assert worker["Content-Type"].startswith("text/javascript")
    assert reverse("worker").count("/") == 1
    assert client.get(reverse("who")).json() == {"user": None, "token": ""}
    assert crew.get(reverse("who")).json()["user"] == world.crew.pk
    assert world.crew.name not in client.get(reverse("no-signal")).content.decode()
