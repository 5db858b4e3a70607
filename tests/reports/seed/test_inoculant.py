"""Inoculant on the order: how much, in which packets, from whom."""

import csv
import io

import pytest
from django.urls import reverse
from django.utils import timezone

from farm.units import KG_PER_LB
from records.models import InputProduct, SeedDressing, SeedLot, SeedOrder
from tests.factories import (
    InputProductFactory,
    KindFactory,
    PlantingFactory,
    SeedDressingFactory,
    SeedLineFactory,
    SeedLotFactory,
    SupplierFactory,
)
from tests.reports.seed.sowings import posted

pytestmark = pytest.mark.django_db

LB_50, OZ_8 = 50 * KG_PER_LB, 0.5 * KG_PER_LB


@pytest.fixture
def peat(world):
    """A legume planned with seed on hand, and its inoculant at 5 oz to 50 lb."""
    told = {"farm": world.farm, "written_by": world.owner}
    today = timezone.localdate()
    SeedLot.objects.filter(farm=world.farm).update(tested_on=None)
    pea = KindFactory(name="Trial pea", group="legume")
    whole = {"purity_share": 1.0, "germination_share": 1.0}
    SeedLotFactory(**told, **whole, kind=pea, tested_on=today, received_kg=LB_50 * 4)
    plan = PlantingFactory(
        **told,
        field=world.ours["fields"],
        sown_on=None,
        planned_on=today,
        method="drilled",
        line=None,
    )
    SeedLineFactory(planting=plan, kind=pea, lot=None, seed_kg=LB_50 * 2)
    supplier = SupplierFactory(**told, name="Peat House", freight=12.0)
    product = InputProductFactory(**told, name="Pea peat", type="inoculant")
    return SeedDressingFactory(
        **told,
        kind=pea,
        product=product,
        dose_share=5 / 800,
        supplier=supplier,
        packet_kg=OZ_8,
        packet_price=9.0,
    )


def page(world, client, name, *args, **asked):
    url = reverse(f"reports:{name}", args=[world.farm.slug, *args])
    return client.get(url, {"overage": "0", **asked}).content


def test_inoculant_of_another_supplier_becomes_an_order_of_its_own(
    world, owner_client, peat
):
    answer = page(world, owner_client, "seed-order").decode()
    assert "from other suppliers" in answer
    # 100 lb at 5 oz to 50 lb are 10 oz: two packets of 8 oz.
    assert "2 of 8" in answer
    form = answer[answer.index("Onto the seed, from Peat House") :]
    new = reverse("records:new", args=[world.farm.slug, "seed-orders"])
    assert owner_client.post(new, posted(form)).status_code == 302
    order = SeedOrder.objects.latest("pk")
    line = order.dressings.get()
    assert (str(order.supplier), order.freight) == ("Peat House", 12.0)
    assert (line.packets, line.price, line.for_seed) == (2, 9.0, "Trial pea")
    assert line.needed_kg == pytest.approx(10 / 16 * KG_PER_LB)
    again = page(world, owner_client, "seed-order").decode()
    assert "Onto the seed, from" not in again


def test_the_sheet_to_the_supplier_names_inoculant_its_amount_and_packets(
    world, owner_client, peat
):
    answer = page(world, owner_client, "seed-order").decode()
    form = answer[answer.index("Onto the seed, from Peat House") :]
    new = reverse("records:new", args=[world.farm.slug, "seed-orders"])
    owner_client.post(new, posted(form))
    order = SeedOrder.objects.latest("pk")
    shown = page(world, owner_client, "order", order.pk).decode()
    for words in ("Pea peat", "Trial pea", "10\xa0oz", "30.00"):
        assert words in shown
    table = page(world, owner_client, "order-csv", order.pk).decode("utf-8-sig")
    (row,) = csv.DictReader(io.StringIO(table))
    assert (row["onto the seed"], row["bags"], row["cost"]) == ("Pea peat", "2", "18.0")
    assert row["amount needed [lb]"] == "0.625"


def test_inoculant_without_packet_or_supplier_is_said_and_not_lost(
    world, owner_client, peat
):
    SeedDressing.objects.filter(pk=peat.pk).update(supplier=None, packet_kg=None)
    answer = page(world, owner_client, "seed-order").decode()
    assert "nobody named to buy it from" in answer
    # Who makes it sells it, where nobody else is named.
    InputProduct.objects.filter(pk=peat.product_id).update(maker="Peat House")
    answer = page(world, owner_client, "seed-order").decode()
    assert "Onto the seed, from Peat House" in answer
    assert "size not written down" in answer


@pytest.mark.parametrize(
    ("box", "typed", "words"),
    [
        ("packet_kg", "0 oz", "more than nothing"),
        ("needed_kg", "", "how much is needed"),
        ("product", "", "which inoculant"),
        ("packets", "0", "greater than or equal to 1"),
    ],
)
def test_a_line_of_inoculant_that_makes_no_sense_is_kept_and_not_saved(
    world, owner_client, peat, box, typed, words
):
    before = SeedOrder.objects.count()
    row = {
        "product": peat.product_id,
        "needed_kg": "10 oz",
        "packet_kg": "8 oz",
        "packets": "2",
        box: typed,
    }
    sent = {
        "supplier": peat.supplier_id,
        "drawn_up_on": timezone.localdate().isoformat(),
        "lines-TOTAL_FORMS": "0",
        "lines-INITIAL_FORMS": "0",
        "dressings-TOTAL_FORMS": "1",
        "dressings-INITIAL_FORMS": "0",
        **{f"dressings-0-{name}": value for name, value in row.items()},
    }
    new = reverse("records:new", args=[world.farm.slug, "seed-orders"])
    answer = owner_client.post(new, sent)
    text = answer.content.decode()
    assert words in text
    assert all(
        f'value="{value}"' in text for name, value in row.items() if "kg" in name
    )
    assert SeedOrder.objects.count() == before
