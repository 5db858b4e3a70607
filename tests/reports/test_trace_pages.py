"""A lot's way and balances, as pages."""

import datetime as dt
import re

import pytest
from django.urls import reverse

from reports.calc.shapes.trace import Link, Stop, Trace
from reports.drawings.path import trace_path
from tests.factories import PlantingFactory, SeedLotFactory

SLUG = "alder-hill"


@pytest.mark.django_db
@pytest.mark.parametrize("noun", ["seed-lots", "harvest-lots", "sales", "plantings"])
def test_a_lot_of_the_farm_shows_its_whole_way(noun, world, owner_client):
    pk = world.ours[noun].pk
    page = owner_client.get(reverse("reports:trace", args=[SLUG, noun, pk]))
    told = {line.stop.key for line in page.context["lines"]}
    for other in ("seed-lots", "plantings", "harvest-lots"):
        assert (other, world.ours[other].pk) in told
    assert "<svg" in page.content.decode()


@pytest.mark.django_db
@pytest.mark.parametrize("noun", ["incidents", "nonsense"])
def test_what_is_no_lot_has_no_way(noun, world, owner_client):
    at = reverse("reports:trace", args=[SLUG, noun, world.ours["incidents"].pk])
    assert owner_client.get(at).status_code == 404


@pytest.mark.django_db
def test_a_lot_of_ten_years_ago_is_found_with_its_planting(world, owner_client):
    lot = SeedLotFactory(
        farm=world.farm, kind=world.ours.kind, received_on=dt.date(2015, 3, 1)
    )
    planting = PlantingFactory(
        farm=world.farm,
        field=world.ours["fields"],
        sown_on=dt.date(2015, 5, 1),
        line__kind=world.ours.kind,
        line__lot=lot,
    )
    page = owner_client.get(reverse("reports:trace", args=[SLUG, "seed-lots", lot.pk]))
    told = {line.stop.key for line in page.context["lines"]}
    assert ("plantings", planting.pk) in told


@pytest.mark.django_db
def test_a_lot_grown_where_nothing_was_approved_is_held_on_its_way(world, owner_client):
    world.farm.standard = "us"
    world.farm.save()
    lot = world.ours["harvest-lots"]
    at = reverse("reports:trace", args=[SLUG, "harvest-lots", lot.pk])
    words = f"{lot.code} from {lot.field} is called organic"
    product = world.ours["input-products"]
    for approval in ("IPC 12", ""):
        product.approval = approval
        product.save()
        page = owner_client.get(at).content.decode()
        assert (words in page) is (not approval)
    assert "Hold this lot." in page


@pytest.mark.django_db
def test_lots_are_narrowed_by_words(world, owner_client):
    at = reverse("reports:trace-choose", args=[SLUG])
    assert "BW-26" in owner_client.get(at, {"words": "bw-26"}).content.decode()
    page = owner_client.get(at, {"words": "no such thing"}).content.decode()
    assert "No lot is called so." in page


@pytest.mark.django_db
def test_sales_and_plantings_to_pick_are_told_apart_by_lot_and_field(
    world, owner_client
):
    page = owner_client.get(reverse("reports:trace-choose", args=[SLUG]))
    told = {
        one.stop.key: one.name for all in page.context["choices"] for one in all.picks
    }
    sale, stand = world.ours["sales"], world.ours["plantings"]
    assert sale.lot.code in told["sales", sale.pk]
    assert told["plantings", stand.pk].endswith(f", {stand.field}")
    narrowed = owner_client.get(page.request["PATH_INFO"], {"words": sale.lot.code})
    assert sale.buyer in narrowed.content.decode()


def test_a_way_is_drawn_in_the_columns_it_has_with_whole_names():
    start = Stop(Link.HARVEST, "harvest-lots", 1, "18-MT-W Winter wheat of the bench")
    sold = Stop(Link.SALE, "sales", 2, "Mill")
    drawn = trace_path(Trace(start, (start, sold), ((start, sold),), ()), ident="way")
    texts = re.findall(r"<text[^>]*>([^<]*)<", drawn)
    assert "18-MT-W Winter" in texts and "wheat of the bench" in texts
    lefts = re.findall(r'<rect x="([\d.]+)"', drawn)
    assert lefts == ["0.5", "168.5"]


@pytest.mark.django_db
def test_balances_of_any_period_can_be_asked_for(world, owner_client):
    at = reverse("reports:balances", args=[SLUG, 2026])
    assert "BW-26" in owner_client.get(at).content.decode()
    early = owner_client.get(at, {"first": "2001-01-01", "last": "2001-12-31"})
    assert "was handled in this period" in early.content.decode()
    wrong = owner_client.get(at, {"first": "2026-12-31", "last": "2026-01-01"})
    assert "ends before it begins" in wrong.content.decode()
    assert owner_client.get(at, {"first": "x", "last": ""}).status_code == 200
    ever = owner_client.get(at, {"first": "0001-01-01", "last": "9999-12-31"})
    assert "The books begin in 1900 and end in 2199." in ever.content.decode()


@pytest.mark.django_db
def test_each_stop_says_in_which_field_it_lay_and_how_much_it_was(world, owner_client):
    lot = world.ours["seed-lots"]
    at = reverse("reports:trace", args=["alder-hill", "seed-lots", lot.pk])
    lines = {one.stop.noun: one for one in owner_client.get(at).context["lines"]}
    assert lines["seed-lots"].amount.endswith(" lb")
    assert lines["plantings"].field == "North"
    assert " ac" in lines["plantings"].amount
    assert lines["plantings"].name.endswith(", North")
