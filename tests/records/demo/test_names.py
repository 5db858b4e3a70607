"""What nobody may take for real on the demonstration farm, and how it is worked."""

from farm import units
from records.reading.demo import read
from tests.places import ROOT
from tests.records.demo.story import (
    PLANTINGS,
    STORY,
    kinds,
    live,
)

NEXT_SEASON = read(ROOT / "fixtures" / "demo_seed.json")


def test_no_buckwheat_grows_on_wheat_ground():
    # Advice for Nebraska: not within two years before wheat (NRCS-NB-190-16-8).
    wheat = {r["field"] for r in PLANTINGS if "winter-wheat-grain" in kinds(r)}
    buckwheat = {r["field"] for r in PLANTINGS if "buckwheat" in kinds(r)}
    assert len(wheat) >= 3
    assert wheat & buckwheat == set()


def test_raw_manure_is_worked_in_or_says_that_it_is_not():
    raw = {one["name"] for one in STORY["products"] if one["type"] == "manure"}
    spread = [one for one in live(STORY["applications"]) if one["product"] in raw]
    assert len(spread) >= 3
    assert all("worked_in" in one or "Not worked in" in one["notes"] for one in spread)


def test_no_lot_of_an_input_is_used_before_it_came_or_beyond_what_came():
    for lot in STORY["input_lots"]:
        uses = [
            one
            for one in live(STORY["applications"])
            if (one["product"], one.get("lot")) == (lot["product"], lot["lot"])
        ]
        assert uses, lot["lot"]
        assert min(one["on"] for one in uses) >= lot["received"]
        used = sum(units.parse_mass(one["amount"]) for one in uses)
        assert used <= units.parse_mass(lot["amount"]) + 1e-9, lot["lot"]


def test_nobody_and_nothing_can_be_taken_for_real():
    for person in STORY["people"]:
        assert person["email"].endswith((".example", "@example.org"))
    farm = STORY["farm"]
    for text in (farm["address"], farm["certifier"], farm["certificate_number"]):
        assert "(invented)" in text


def test_the_next_season_is_planned_with_seed_offered_of_every_kind_of_it():
    planned = [row for row in PLANTINGS if "sown" not in row]
    assert len(planned) >= 8
    assert {row["planned"][:4] for row in planned} == {"2019"}
    offered = {offer["kind"] for offer in NEXT_SEASON["offers"]}
    assert {kind for row in planned for kind in kinds(row)} <= offered
