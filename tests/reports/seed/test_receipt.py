"""Seed received, counted, and told in the season report."""

import datetime as dt
import html
import re

import pytest
from django.urls import reverse
from django.utils import timezone

from farm.units import KG_PER_LB
from records.models import LotComponent, LotMove, SeedLot
from records.searching import OWN_KEY
from reports.ledger.lot_books import lot_stories
from tests.factories import (
    KindFactory,
    LotMoveFactory,
    OwnAssumptionFactory,
    PlantingFactory,
    SeedLineFactory,
    SeedLotFactory,
    SourceAskedFactory,
    StockCountFactory,
)
from tests.reports.seed.sowings import (
    page,
)

pytestmark = pytest.mark.django_db


def test_an_order_becomes_a_lot_and_the_tag_is_held_against_the_offer(
    world, owner_client, today
):
    order = world.ours["seed-orders"]
    new = reverse("records:new", args=[world.farm.slug, "seed-lots"])
    form = owner_client.get(new, {"order": order.pk, "line": 0}).context["form"]
    assert form.initial["received_kg"] == 50.0
    sent = {
        "kind": world.ours.kind.pk,
        "order": order.pk,
        "lot_number": "CAME-1",
        "received_on": today.isoformat(),
        "received_kg": "40 kg",
        "purity_share": "98",
        "germination_share": "70",
        "status": "organic",
    }
    assert owner_client.post(new, sent).status_code == 302
    answer = page(world, owner_client, "order", order.pk).content.decode()
    assert "less came than was ordered" in answer
    assert "the tag shows less live seed than was offered" in answer
    assert "CAME-1" in answer


def test_the_order_goes_to_a_spreadsheet_with_every_line(world, owner_client):
    order = world.ours["seed-orders"]
    order.lines.update(variety="=2+2")
    told = page(world, owner_client, "order-csv", order.pk).content.decode("utf-8-sig")
    header, line = told.splitlines()
    assert header.startswith("kind,variety,status,bags")
    assert "Buckwheat,'=2+2,organic,2,55.1156,25.0,40.0,80.0,USD,88.0" in line


def test_the_balance_shows_what_a_count_did_not_find(world, owner_client):
    lot = SeedLotFactory(
        farm=world.farm,
        written_by=world.owner,
        kind=world.ours.kind,
        lot_number="GONE",
        received_on=dt.date(2026, 1, 10),
        received_kg=10 * KG_PER_LB,
        status="untreated",
    )
    LotMove.objects.create(
        farm=world.farm,
        written_by=world.owner,
        written_at=timezone.now(),
        lot=lot,
        what="discarded",
        moved_on=dt.date(2026, 2, 1),
        mass_kg=KG_PER_LB,
    )
    counted = {"counted_on": dt.date(2026, 3, 1), "mass_kg": 7 * KG_PER_LB}
    StockCountFactory(farm=world.farm, written_by=world.owner, seed_lot=lot, **counted)
    answer = page(world, owner_client, "seed-balance", 2026).content.decode()
    row = answer[answer.index("GONE") :]
    assert "search not complete" in row
    assert re.search(r"-2\s+lb", row.replace("\N{MINUS SIGN}", "-"))
    assert SeedLot.objects.with_balance().get(pk=lot.pk).left_kg == pytest.approx(
        7 * KG_PER_LB
    )


def test_a_count_that_finds_nothing_empties_the_lot_and_keeps_what_is_missing(
    world, owner_client, today
):
    lot = SeedLotFactory(
        farm=world.farm,
        written_by=world.owner,
        kind=world.ours.kind,
        lot_number="EMPTY",
        received_on=today - dt.timedelta(9),
        received_kg=3 * KG_PER_LB,
    )
    new = reverse("records:new", args=[world.farm.slug, "stock-counts"])
    count = {"counted_on": today.isoformat(), "seed_lot": lot.pk, "mass_kg": "0"}
    assert owner_client.post(new, count).status_code == 302
    assert SeedLot.objects.with_balance().get(pk=lot.pk).left_kg == 0
    answer = page(world, owner_client, "seed-balance", today.year).content.decode()
    row = answer[answer.index("EMPTY") :]
    assert re.search(r"-3\s+lb", row.replace("\N{MINUS SIGN}", "-"))


def test_the_page_of_a_lot_tells_its_live_seed_its_age_and_its_running_balance(
    world, owner_client, today
):
    received = today - dt.timedelta(40)
    lot = SeedLotFactory(
        farm=world.farm,
        written_by=world.owner,
        kind=world.ours.kind,
        received_on=received,
        received_kg=20 * KG_PER_LB,
        purity_share=0.97,
        germination_share=0.9,
        tested_on=dt.date(today.year - 2, today.month, 1),
        status="untreated",
    )
    told = {"farm": world.farm, "written_by": world.owner}
    for days, pounds in ((20, 12), (10, 11)):
        on = received + dt.timedelta(days)
        StockCountFactory(
            **told, seed_lot=lot, counted_on=on, mass_kg=pounds * KG_PER_LB
        )
    LotMoveFactory(
        **told,
        lot=lot,
        what="discarded",
        moved_on=received + dt.timedelta(10),
        mass_kg=5 * KG_PER_LB,
    )
    url = reverse("records:page", args=[world.farm.slug, "seed-lots", lot.pk])
    answer = owner_client.get(url).content.decode()
    stands = answer[answer.index("How it stands") : answer.index("Pictures and papers")]
    text = re.sub(r"\s+", " ", html.unescape(re.sub("<[^>]+>", " ", stands)))
    assert "Pure live seed by the tag 87 %" in text
    assert "24 months test it again, or sow more" in text
    assert "Search for organic seed not complete" in text
    # Came 20, thrown out 5, counted 11 on that day, and 12 ten days on: in that order.
    weights = re.findall(r"(-?[\d.]+) (?:lb|oz)", text)
    assert weights == ["12", "20", "20", "-5", "15", "-4", "11", "1", "12"]


def test_the_page_of_a_search_says_what_it_lacks_by_the_farms_own_number(
    world, owner_client
):
    search = world.ours["seed-searches"]
    url = reverse("records:page", args=[world.farm.slug, "seed-searches", search.pk])
    # Three sources make it complete: common practice.
    answer = owner_client.get(url).content.decode()
    assert "not complete" in answer
    assert "1 of 3, in the year up to the day of the search" in answer
    for name in ("A seed house", "Another"):
        SourceAskedFactory(search=search, source=name, asked_on=search.searched_on)
    answer = owner_client.get(url).content.decode()
    assert "not complete" not in answer
    assert "3 of 3" in answer


def test_the_list_of_searches_says_which_are_complete_by_the_farms_own_number(
    world, owner_client
):
    url = reverse("records:list", args=[world.farm.slug, "seed-searches"])
    assert "not complete" in owner_client.get(url).content.decode()
    told = {"farm": world.farm, "written_by": world.owner}
    own = OwnAssumptionFactory(**told, key=OWN_KEY, value=1, low=1, high=9)
    answer = owner_client.get(url).content.decode()
    assert "complete" in answer and "not complete" not in answer
    own.voided_at, own.voided_by = timezone.now(), world.owner
    own.void_reason = "three again"
    own.save()
    assert "not complete" in owner_client.get(url).content.decode()


def test_a_mix_is_listed_with_every_kind_in_it(world, owner_client):
    lot = SeedLotFactory(
        farm=world.farm, written_by=world.owner, kind=world.ours.kind, lot_number="MIX"
    )
    for kind in (world.ours.kind, KindFactory(farm=world.farm, name="Sunn hemp")):
        LotComponent.objects.create(lot=lot, kind=kind, pure_share=0.4)
    url = reverse("records:list", args=[world.farm.slug, "seed-lots"])
    assert f"{world.ours.kind} + Sunn hemp" in owner_client.get(url).content.decode()


def test_the_page_of_a_mix_names_the_kind_of_each_line_that_was_sown(
    world, owner_client
):
    told = {"farm": world.farm, "written_by": world.owner}
    lot = SeedLotFactory(**told, kind=world.ours.kind, lot_number="MIX")
    other = KindFactory(farm=world.farm, name="Sunn hemp")
    for kind in (lot.kind, other):
        LotComponent.objects.create(lot=lot, kind=kind, pure_share=0.4)
    field = world.ours["fields"]
    stand = PlantingFactory(**told, field=field, line__kind=lot.kind, line__lot=lot)
    SeedLineFactory(planting=stand, kind=other, lot=lot)
    url = reverse("records:page", args=[world.farm.slug, "seed-lots", lot.pk])
    answer = owner_client.get(url).content.decode()
    for kind in (lot.kind, other):
        assert f"{kind} sown on {field}" in answer


def test_the_balance_of_the_list_is_that_of_the_book(world):
    told = {story.id: story for story in lot_stories(world.farm, until=dt.date.max)}
    assert told
    for lot in SeedLot.objects.on(world.farm).live().with_balance():
        counted = [event for event in told[lot.pk].events if event.entry == "counted"]
        assert (lot.counted_kg is not None) == bool(counted)


def test_the_season_report_tells_each_search_and_each_lot_without_one(
    world, owner_client
):
    lot = world.ours["seed-lots"]
    SeedLot.objects.filter(pk=lot.pk).update(status="untreated")
    search = world.ours["seed-searches"]
    answer = page(world, owner_client, "season", 2026).content.decode()
    assert "search for organic seed not complete" in answer
    assert "Searches for organic seed" in answer
    for name in ("A seed house", "Another", "A third"):
        SourceAskedFactory(search=search, source=name, asked_on=search.searched_on)
    answer = page(world, owner_client, "season", 2026).content.decode()
    assert "search for organic seed complete" in answer
    assert "search for organic seed not complete" not in answer
