"""What is no seed, no offer and no order."""

import pytest
from django.urls import reverse

from records.models import SeedLot, SeedOffer, SeedOrder
from tests.factories import (
    KindFactory,
    SeedLotFactory,
)
from tests.records.typed import rows

pytestmark = pytest.mark.django_db


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
