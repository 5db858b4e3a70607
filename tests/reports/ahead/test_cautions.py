"""Cautions at the moment of the act."""

from tests.reports.ahead.places import (
    address,
    page,
)


def cautions(client, world, **chosen):
    query = "?" + "&".join(f"{name}={value}" for name, value in chosen.items())
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


def test_each_caution_stands_with_its_source_on_the_assumptions_page(
    world, owner_client
):
    text = page(owner_client, world, "reports:assumptions").content.decode()
    assert "Ask your veterinarian or Extension about this kind" in text
    assert "common practice" in text
