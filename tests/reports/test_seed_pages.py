"""Seed from the plan to the order, the lot and the balance, through the pages."""

import datetime as dt
import re

import pytest
from django.urls import reverse
from django.utils import timezone

from farm.units import KG_PER_LB, M2_PER_ACRE
from records.models import LotMove, SeedLot, SeedOffer, SeedOrder
from reports.ledger.coming import on_the_way
from reports.ledger.lot_books import lot_stories
from reports.ledger.seed import seed_ledger
from tests.factories import (
    FieldFactory,
    KindFactory,
    KindFigureFactory,
    OfferPriceFactory,
    PlantingFactory,
    SeedLotFactory,
    SeedOfferFactory,
    SeedSearchFactory,
    SourceAskedFactory,
    StockCountFactory,
    SupplierFactory,
)
from tests.records.typed import rows

pytestmark = pytest.mark.django_db
BAG = 50 * KG_PER_LB


@pytest.fixture
def today():
    return timezone.localdate()


@pytest.fixture
def oats(world, today):
    """A kind with a rate, planned on two acres, and nothing of it on hand."""
    kind = KindFactory(farm=world.farm, slug="alder-hill--oats", name="Oats")
    KindFigureFactory(
        kind=kind,
        attribute="seeding_rate_drilled",
        low=80,
        high=110,
        unit="lb/ac",
        source="CORN-OAT",
    )
    plan(world, kind, today)
    return kind


def plan(world, kind, today, days=60):
    field = FieldFactory(farm=world.farm, area_m2=2 * M2_PER_ACRE)
    return PlantingFactory(
        farm=world.farm,
        written_by=world.owner,
        field=field,
        area_m2=field.area_m2,
        method="drilled",
        sown_on=None,
        planned_on=today + dt.timedelta(days),
        line__kind=kind,
        line__lot=None,
        line__seed_kg=None,
    )


def offer(world, kind, status="organic", price=30.0, **more):
    found = SeedOfferFactory(
        farm=world.farm,
        written_by=world.owner,
        kind=kind,
        status=status,
        price=None,
        tested_on=timezone.localdate(),
        supplier=SupplierFactory(farm=world.farm, written_by=world.owner),
        **more,
    )
    OfferPriceFactory(offer=found, bag_kg=BAG, price=price)
    return found


def page(world, client, name, *args):
    return client.get(reverse(f"reports:{name}", args=[world.farm.slug, *args]))


def posted(answer):
    """The boxes of the first order a page proposes."""
    told = re.findall(r'type="hidden" name="([^"]+)" value="([^"]*)"', answer)
    aside = ("csrfmiddlewaretoken", "next")
    return {name: value for name, value in told if name not in aside}


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


def test_the_balance_of_the_list_is_that_of_the_book(world):
    told = {story.id: story for story in lot_stories(world.farm, until=dt.date.max)}
    assert told
    for lot in SeedLot.objects.on(world.farm).live().with_balance():
        counted = [event for event in told[lot.pk].events if event.entry == "counted"]
        assert (lot.counted_kg is not None) == bool(counted)


def test_a_mix_must_add_up_and_is_told_as_a_whole(world, owner_client):
    vetch = KindFactory(farm=world.farm, slug="alder-hill--vetch", name="Vetch")
    url = reverse("records:new", args=[world.farm.slug, "seed-lots"])

    def mix(vetch_share, **over):
        kinds = ((world.ours.kind, "60", "90"), (vetch, vetch_share, "80"))
        told = [
            {"kind": one.pk, "pure_share": pure, "germination_share": live}
            for one, pure, live in kinds
        ]
        sent = {
            "kind": vetch.pk,
            "lot_number": "MIX",
            "received_on": "2026-03-01",
            "received_kg": "50 lb",
            "status": "organic",
            "other_crop_share": "0.5",
            "inert_share": "1.4",
            "weed_share": "0.1",
            **rows("components", *told),
        }
        return owner_client.post(url, sent | over)

    assert "add up to 92 %, not 100 %" in mix("30").content.decode()
    named = rows("weeds", {"name": "Dodder"})
    assert "Name each weed with its number." in mix("38", **named).content.decode()
    twice = rows("weeds", *[{"name": "Dodder", "count_per_kg": "3/lb"}] * 2)
    assert "This weed stands twice." in mix("38", **twice).content.decode()
    named = rows("weeds", {"name": "Dodder", "count_per_kg": "3 per lb"})
    both = mix("38", no_noxious="on", **named)
    assert "Weeds are named below." in both.content.decode()
    assert mix("38", **named).status_code == 302
    lot = SeedLot.objects.get(lot_number="MIX")
    assert lot.pls_share == pytest.approx(0.6 * 0.9 + 0.38 * 0.8)
    assert lot.holds(world.ours.kind)
    assert lot.holds(vetch)


@pytest.mark.parametrize(
    ("prices", "sentence"),
    [
        ([{"price": "40"}], "how much one bag weighs"),
        ([{"bag_kg": "50 lb"}], "what one bag costs"),
        ([], "what a bag weighs and costs"),
        (
            [
                {"bag_kg": "50 lb", "from_bags": "10", "price": "40"},
                {"bag_kg": "50 lb", "from_bags": "1", "price": "44"},
            ],
            "go up from row to row",
        ),
        (
            [
                {"bag_kg": "50 lb", "from_bags": "1", "price": "40"},
                {"bag_kg": "50 lb", "from_bags": "10", "price": "44"},
            ],
            "cannot cost more",
        ),
    ],
)
def test_a_table_of_prices_that_makes_no_sense_is_refused(
    world, owner_client, prices, sentence
):
    url = reverse("records:new", args=[world.farm.slug, "seed-offers"])
    told = {
        "supplier": world.ours["suppliers"].pk,
        "kind": world.ours.kind.pk,
        "offered_on": "2026-01-07",
        "status": "organic",
        **rows("prices", *prices),
    }
    assert sentence in owner_client.post(url, told).content.decode()


@pytest.mark.parametrize(
    ("told", "sentence"),
    [
        ({}, "a kind and its bags"),
        ({"sent_on": "2026-01-06"}, "sent before it was drawn up"),
    ],
)
def test_an_order_of_nothing_or_out_of_its_days_is_refused(
    world, owner_client, told, sentence
):
    url = reverse("records:new", args=[world.farm.slug, "seed-orders"])
    before = SeedOrder.objects.count()
    sent = {"supplier": world.ours["suppliers"].pk, "drawn_up_on": "2026-01-07"}
    line = {"kind": world.ours.kind.pk, "status": "organic", "bag_kg": "50 lb"}
    lines = rows("lines", *([line | {"bags": "2"}] if told else []))
    sent |= lines | told | {"reference": "OUR 12"}
    answer = owner_client.post(url, sent)
    assert sentence in answer.content.decode()
    assert 'value="OUR 12"' in answer.content.decode()
    assert SeedOrder.objects.count() == before


def test_an_offer_that_runs_out_before_it_begins_is_refused(world, owner_client):
    url = reverse("records:new", args=[world.farm.slug, "seed-offers"])
    before = SeedOffer.objects.count()
    told = {
        "supplier": world.ours["suppliers"].pk,
        "kind": world.ours.kind.pk,
        "offered_on": "2026-01-07",
        "status": "organic",
        "in_stock_from": "2026-05-01",
        "in_stock_until": "2026-04-01",
        **rows("prices", {"bag_kg": "50 lb", "from_bags": "1", "price": "40"}),
    }
    answer = owner_client.post(url, told).content.decode()
    assert "The last day in stock is before the first." in answer
    assert 'value="2026-04-01"' in answer
    assert SeedOffer.objects.count() == before


@pytest.mark.parametrize(
    ("tag", "sentence"),
    [
        ({"purity_share": "0"}, "of this kind"),
        ({"germination_share": "0"}, "nothing of it would come up"),
        ({"germination_share": "95", "hard_share": "10"}, "pass 100 %"),
        ({"purity_share": "98", "inert_share": "5"}, "not 100 %"),
    ],
)
def test_a_tag_that_cannot_be_is_refused(world, owner_client, tag, sentence):
    url = reverse("records:new", args=[world.farm.slug, "seed-lots"])
    told = {
        "kind": world.ours.kind.pk,
        "lot_number": "BAD",
        "received_on": "2026-03-01",
        "received_kg": "50 lb",
        "status": "organic",
        **tag,
    }
    assert sentence in owner_client.post(url, told).content.decode()
    assert not SeedLot.objects.filter(lot_number="BAD").exists()


def test_no_more_can_leave_a_lot_than_it_holds(world, owner_client, today):
    lot = SeedLotFactory(
        farm=world.farm, written_by=world.owner, kind=world.ours.kind, received_kg=10.0
    )
    url = reverse("records:new", args=[world.farm.slug, "lot-moves"])
    told = {"lot": lot.pk, "what": "discarded", "moved_on": today.isoformat()}
    answer = owner_client.post(url, told | {"mass_kg": "11 kg"})
    assert "Count it first" in answer.content.decode()
    assert owner_client.post(url, told | {"mass_kg": "9 kg"}).status_code == 302


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
