"""A stand to come, its residue both ways, and what was foretold of it."""

import datetime as dt

from tests.factories import (
    ObservationFactory,
)
from tests.reports.ahead.places import (
    address,
    on,
    page,
)


def test_a_stands_page_draws_its_stages_and_says_how_each_is_known(
    world, stand, owner_client
):
    text = page(owner_client, world, "reports:stand", stand.pk).content.decode()
    assert "<svg" in text and "the range in print, not odds" in text
    assert "In the week after sowing" in text


def test_what_lies_ahead_is_not_opened_to_an_inspector(world, stand, as_person):
    client = as_person(world.inspector)
    shown = [
        address(world, "reports:now"),
        address(world, "reports:gaps"),
        address(world, "reports:stand", stand.pk),
        address(world, "reports:residue", stand.pk),
    ]
    assert {client.get(path).status_code for path in shown} == {403}


def test_both_residues_stand_side_by_side_with_what_matters(world, stand, owner_client):
    query = f"{on()}&end=2026-07-30&wish=weeds"
    answer = page(owner_client, world, "reports:residue", stand.pk, query=query)
    assert [row.wish.value for row in answer.context["advice"]] == ["weeds"]
    assert answer.context["choice"].ended_on == dt.date(2026, 7, 30)
    assert not answer.context["choice"].on_top.taken
    text = answer.content.decode()
    assert "Left on top against worked in" in text
    names = [pair.name for pair in answer.context["ways"]]
    assert names == ["Mass left", "Ground covered", "Weeds held back", "Nitrogen freed"]
    assert text.count("<svg") == 7
    assert answer.context["serving"].wish.value == "weeds"


def test_the_choice_and_its_reason_go_to_the_form_of_the_end(
    world, stand, owner_client
):
    query = f"?planting={stand.pk}&residue=worked_in&reason=Nitrogen+soon"
    form = page(owner_client, world, "records:new", "terminations", query=query)
    initial = form.context["form"].initial
    assert initial["residue"] == "worked_in" and initial["reason"] == "Nitrogen soon"


def test_a_stand_of_another_farm_is_not_found(world, stand, as_person):
    theirs = world.theirs["plantings"].pk
    for name in ("reports:stand", "reports:residue"):
        assert (
            as_person(world.owner).get(address(world, name, theirs)).status_code == 404
        )


def test_dates_foretold_stand_beside_those_seen(world, here, stand, owner_client):
    ObservationFactory(
        **here, planting=stand, seen="first_flower", seen_on=dt.date(2026, 7, 22)
    )
    answer = page(owner_client, world, "reports:foretold")
    late = {
        row.told.name.value: row.late_days
        for name, row in answer.context["rows"]
        if name == "Creek"
    }
    stages = {one.name.value for one, told in answer.context["by_stage"] if told}
    assert "first_flower" in stages
    # In print: first flower on day 30, which is 20 July.
    assert late["first_flower"] == 2
