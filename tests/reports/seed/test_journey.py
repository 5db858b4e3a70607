"""A season's seed from price list to balance: ordered, received, weighed out, sown."""

import datetime as dt
import re

import pytest
from django.urls import reverse
from django.utils import timezone

from farm.units import KG_PER_LB
from records.models import SeedLot, SeedOffer, SeedOrder, StockCount
from records.nouns import BY_SLUG
from records.tables import trial
from tests.factories import KindFigureFactory, SupplierFactory
from tests.records.typed import rows
from tests.reports.seed.sowings import posted

pytestmark = pytest.mark.django_db

OFFERS = (
    "record_key,supplier_name,kind,offered_on,status,purity_share,germination_share\n"
    "first,Lake Seed,{kind},{day},organic,0.98,0.9\n"
)
PRICES = (
    "offer,bag_kg,from_bags,price\n"
    "first,22.6796185,1,48.5\n"
    "first,22.6796185,10,{more}\n"
)


@pytest.fixture
def supplier(world):
    return SupplierFactory(farm=world.farm, written_by=world.owner, name="Lake Seed")


def price_list(world, more="44", *, keep):
    day = timezone.localdate().isoformat()
    offers = OFFERS.format(kind=world.ours.kind.slug, day=day)
    files = {
        "seed-offers": ("offers.csv", offers.encode()),
        "seed-offers-prices": ("prices.csv", PRICES.format(more=more).encode()),
    }
    who = {"farm": world.farm, "by": world.owner, "now": timezone.now()}
    return trial.try_out(BY_SLUG["seed-offers"], files, **who, keep=keep)


def new(world, noun):
    return reverse("records:new", args=[world.farm.slug, noun])


def report(world, client, name, *args):
    url = reverse(f"reports:{name}", args=[world.farm.slug, *args])
    return client.get(url).content.decode()


def test_the_season_is_ordered_received_weighed_out_and_sown_and_closes(
    world, owner_client, supplier
):
    today, kind = timezone.localdate(), world.ours.kind
    KindFigureFactory(kind=kind, fifty_pounds_drilled=True)
    SeedLot.objects.filter(farm=world.farm).update(tested_on=None)
    # The cast's own order promises no live seed, and nothing is counted on of it.
    world.ours["seed-orders"].lines.update(pls_share=None)
    offer = {
        "supplier": supplier.pk,
        "kind": kind.pk,
        "offered_on": today.isoformat(),
        "status": "organic",
        "purity_share": "100",
        "germination_share": "90",
        **rows("prices", {"bag_kg": "50 lb", "from_bags": "1", "price": "60"}),
    }
    assert owner_client.post(new(world, "seed-offers"), offer).status_code == 302
    plan = {
        "field": world.ours["fields"].pk,
        "area_m2": "1 ac",
        "purpose": "cover",
        "method": "drilled",
        "planned_on": (today + dt.timedelta(20)).isoformat(),
        **rows("lines", {"kind": kind.pk}),
    }
    assert owner_client.post(new(world, "plantings"), plan).status_code == 302

    answer = report(world, owner_client, "seed-order")
    owner_client.post(new(world, "seed-orders"), posted(answer))
    order = SeedOrder.objects.latest("pk")
    # 50 lb/ac and 5 % to spare at 90 %: two bags of 50 lb.
    assert order.lines.get().bags == 2

    lot = {
        "order": order.pk,
        "kind": kind.pk,
        "supplier": supplier.name,
        "lot_number": "NEW",
        "received_on": today.isoformat(),
        "received_kg": "100 lb",
        "purity_share": "100",
        "germination_share": "90",
        "tested_on": today.isoformat(),
        "status": "organic",
    }
    assert owner_client.post(new(world, "seed-lots"), lot).status_code == 302
    assert "as ordered" in report(world, owner_client, "order", order.pk)
    assert "Nothing has to be bought" in report(world, owner_client, "seed-order")

    came = SeedLot.objects.get(lot_number="NEW")
    sown = {**plan, "sown_on": today.isoformat(), "planned_on": ""}
    line = {"kind": kind.pk, "lot": came.pk, "seed_kg": "58 lb", "share": "100"}
    sent = sown | rows("lines", line)
    assert owner_client.post(new(world, "plantings"), sent).status_code == 302
    count = {
        "counted_on": today.isoformat(),
        "seed_lot": came.pk,
        "mass_kg": "41 lb",
    }
    assert owner_client.post(new(world, "stock-counts"), count).status_code == 302
    assert StockCount.objects.filter(seed_lot=came).count() == 1

    book = report(world, owner_client, "seed-balance", today.year)
    row = book[book.index(">NEW<") :]
    told = re.findall(r"(-?[\d.]+)\xa0(?:lb|oz)", row[: row.index("</tr>")])
    # The count found a pound less than 42.
    assert told == ["0", "100", "58", "0", "-1", "41"]
    left = SeedLot.objects.with_balance().get(pk=came.pk).left_kg
    assert left == pytest.approx(41 * KG_PER_LB)


def test_a_price_list_is_seen_first_and_then_comes_in_as_a_table(world, supplier):
    before = SeedOffer.objects.count()
    assert price_list(world, keep=False).outcome.faults == []
    assert SeedOffer.objects.count() == before
    assert price_list(world, keep=True).outcome.faults == []
    offer = SeedOffer.objects.latest("pk")
    assert (offer.supplier, offer.kind) == (supplier, world.ours.kind)
    assert [row.price for row in offer.prices.order_by("from_bags")] == [48.5, 44.0]


def test_a_price_list_out_of_order_is_refused_at_its_row(world, supplier):
    before = SeedOffer.objects.count()
    told = price_list(world, more="50", keep=True).outcome.faults
    assert [(fault.table, fault.row, fault.column) for fault in told] == [
        ("seed-offers-prices", 3, "price")
    ]
    assert SeedOffer.objects.count() == before
