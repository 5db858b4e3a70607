"""The seed order, from a plan to the words that go out."""

import datetime as dt
import re

import pytest
from django.urls import reverse

from records.models import SeedOrder
from reports.ledger.coming import on_the_way
from reports.ledger.lot_books import lot_stories
from reports.ledger.seed import seed_ledger
from tests.factories import (
    SeedLotFactory,
    SeedSearchFactory,
    SourceAskedFactory,
)
from tests.reports.seed.sowings import BAG, offer, page, plan, posted

pytestmark = pytest.mark.django_db


def test_without_a_plan_the_page_says_how_to_begin(world, owner_client):
    answer = page(world, owner_client, "seed-order").content.decode()
    assert "No planting is planned in this period" in answer


def test_without_an_offer_the_kind_is_named_with_what_is_missing(
    world, owner_client, oats
):
    answer = page(world, owner_client, "seed-order").content.decode()
    assert "Not covered by any offer" in answer
    # 2 ac × 95 lb/ac and 5 % to spare.
    assert re.search(r"Oats, 200\s+lb", answer)
    assert posted(answer) == {}


def test_an_order_proposed_is_written_down_with_one_press(world, owner_client, oats):
    told = offer(world, oats)
    answer = page(world, owner_client, "seed-order").content.decode()
    url = reverse("records:new", args=[world.farm.slug, "seed-orders"])
    before = SeedOrder.objects.count()
    owner_client.post(url, posted(answer))
    owner_client.post(url, posted(answer))
    assert SeedOrder.objects.count() == before + 1
    order = SeedOrder.objects.latest("pk")
    (line,) = order.lines.all()
    assert (order.supplier, line.kind, line.status) == (told.supplier, oats, "organic")
    # 199.5 lb of pure live seed from bags of 50 lb at 98 % and 90 %: five.
    assert (line.bags, line.bag_kg) == (5, BAG)


def test_what_is_ordered_and_has_not_come_is_not_ordered_again(
    world, owner_client, oats, today
):
    offer(world, oats)
    answer = page(world, owner_client, "seed-order").content.decode()
    url = reverse("records:new", args=[world.farm.slug, "seed-orders"])
    owner_client.post(url, posted(answer))
    again = page(world, owner_client, "seed-order").content.decode()
    assert "ordered, not yet come" in again
    assert "Nothing has to be bought" in again
    order = SeedOrder.objects.latest("pk")
    SeedLotFactory(
        farm=world.farm,
        written_by=world.owner,
        kind=oats,
        order=order,
        received_kg=2 * BAG,
        tested_on=today,
    )
    # Two of five bags came: three are still on the way.
    (owed,) = on_the_way(world.farm, by=today)[-1:]
    assert owed.stock.left_kg == pytest.approx(3 * BAG)


def test_crew_see_the_order_but_cannot_write_it_down(world, as_person, oats):
    offer(world, oats)
    answer = page(world, as_person(world.crew), "seed-order").content.decode()
    assert "No order that covers every planting costs less" in answer
    assert "Write down the order" not in answer


def test_a_supplier_left_out_is_not_bought_from(world, owner_client, oats):
    cheap, dear = offer(world, oats), offer(world, oats, price=45.0)
    url = reverse("reports:seed-order", args=[world.farm.slug])
    answer = owner_client.get(url, {"without": cheap.supplier.pk}).content.decode()
    assert f"Write down the order to {dear.supplier}" in answer


def test_seed_that_is_not_organic_cannot_be_sent_for_before_a_search(
    world, owner_client, oats, today
):
    offer(world, oats, status="untreated")
    answer = page(world, owner_client, "seed-order").content.decode()
    assert "search for organic seed not complete" in answer
    sent = posted(answer) | {"sent_on": today.isoformat()}
    url = reverse("records:new", args=[world.farm.slug, "seed-orders"])
    refused = owner_client.post(url, sent)
    assert "complete search for organic seed" in refused.content.decode()
    search = SeedSearchFactory(
        farm=world.farm, written_by=world.owner, kind=oats, searched_on=today
    )
    for name in ("A", "B", "C"):
        SourceAskedFactory(search=search, source=name, asked_on=today)
    assert owner_client.post(url, sent).status_code == 302


def test_the_questions_stay_the_same_however_much_is_planned(
    world, oats, today, django_assert_num_queries
):
    span = (today, today + dt.timedelta(364))
    with django_assert_num_queries(16):
        seed_ledger(world.farm, *span, by=today)
    for _ in range(4):
        plan(world, oats, today)
        offer(world, oats)
        SeedLotFactory(farm=world.farm, written_by=world.owner, kind=oats)
    with django_assert_num_queries(16):
        seed_ledger(world.farm, *span, by=today)
    with django_assert_num_queries(8):
        lot_stories(world.farm, until=today)
