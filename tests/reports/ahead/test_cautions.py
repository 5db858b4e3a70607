"""Cautions at the moment of the act."""

from urllib.parse import urlencode

import pytest

from tests.factories import FieldFactory, ObservationFactory, PlantingFactory
from tests.reports.ahead.places import SOWN, TODAY, address, page


def cautions(client, world, **chosen):
    query = f"?{urlencode(chosen, doseq=True)}"
    answer = page(client, world, "reports:acts", query=query)
    return [row.act.value for row in answer.context["warned"]]


def test_the_form_of_an_end_asks_for_the_cautions_of_what_is_chosen(
    world, stand, owner_client
):
    form = page(owner_client, world, "records:new", "terminations", query="?")
    assert address(world, "reports:acts") in form.content.decode()
    assert cautions(owner_client, world, planting=stand.pk, method="grazed") == [
        "graze"
    ]


def test_spreading_manure_is_warned_of(world, stand, owner_client):
    product = world.ours["input-products"]
    assert cautions(owner_client, world, product=product.pk) == []
    product.type = "manure"
    product.save()
    assert cautions(owner_client, world, product=product.pk) == ["manure"]


def test_material_against_pests_brings_the_caution_of_spraying(
    world, stand, owner_client
):
    product = world.ours["input-products"]
    product.type = "pest"
    product.save()
    assert cautions(owner_client, world, product=product.pk) == ["spray"]


def test_cutting_several_stands_at_once_warns_if_one_of_them_has_set_seed(
    world, here, stand, owner_client
):
    field, kind = FieldFactory(**here, name="Low ground"), world.ours.kind
    ripe = PlantingFactory(**here, field=field, sown_on=SOWN, line__kind=kind)
    ObservationFactory(**here, planting=ripe, seen="seed_set", seen_on=TODAY)
    chosen = {"method": "mown", "ended_on": TODAY}
    places = [stand.pk, ripe.pk]
    assert cautions(owner_client, world, **chosen, place=stand.pk) == ["machine"]
    both = ["machine", "after_seed"]
    assert cautions(owner_client, world, **chosen, place=places) == both


@pytest.mark.parametrize(
    ("what", "told"), [("look", []), ("cut", ["machine"]), ("work_in", ["machine"])]
)
def test_a_duty_is_warned_of_when_it_is_set(world, stand, owner_client, what, told):
    form = page(owner_client, world, "records:new", "duties", query="?")
    assert address(world, "reports:acts") in form.content.decode()
    asked = {"what": what, "planting": stand.pk, "latest_on": TODAY}
    assert cautions(owner_client, world, **asked) == told


def test_choosing_what_becomes_of_the_residue_asks_for_its_cautions(
    world, stand, owner_client
):
    text = page(owner_client, world, "reports:residue", stand.pk).content.decode()
    assert address(world, "reports:acts", query="?ended_on=") in text


def test_each_caution_stands_with_its_source_on_the_assumptions_page(
    world, owner_client
):
    text = page(owner_client, world, "reports:assumptions").content.decode()
    assert "Ask your veterinarian or Extension about this kind" in text
    assert "common practice" in text
