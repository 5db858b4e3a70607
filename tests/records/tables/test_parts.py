"""Tables of parts beside those of their records."""

from farm.models import Change
from records.models import Planting
from tests.factories import (
    KindFactory,
)
from tests.records.tables.papers import (
    PLANTINGS,
    counts,
    faults,
    lines_csv,
    load,
    out,
    plantings_csv,
)


def both_tables(plantings, lines):
    return {
        "plantings": ("p.csv", plantings.encode()),
        "plantings-lines": ("l.csv", lines.encode()),
    }


def test_a_word_of_ones_own_ties_seed_lines_to_their_new_planting(world):
    KindFactory(farm=world.farm, slug="alder-hill--oats", name="Oats")
    files = both_tables(
        plantings_csv("first,North,2026-08-01,500,drilled", "2,North,2026-08-02,,"),
        lines_csv("first,Buckwheat,2,0.5", "first,Oats,3,0.5", "2,oats,4,"),
    )
    assert counts(load(world.farm, PLANTINGS, files, by=world.owner)) == (2, 0, 0)
    mix = Planting.objects.get(sown_on="2026-08-01")
    told = mix.lines.order_by("pk").values_list("kind__name", "seed_kg", "share")
    assert list(told) == [("Buckwheat", 2, 0.5), ("Oats", 3, 0.5)]
    whole = Planting.objects.get(sown_on="2026-08-02")
    assert whole.area_m2 == world.ours["fields"].area_m2
    assert whole.lines.get().share == 1
    assert counts(load(world.farm, PLANTINGS, files, by=world.owner)) == (0, 0, 2)


def test_the_rules_of_the_entry_form_hold_for_tables(world):
    files = both_tables(
        plantings_csv(
            "a,North,2031-01-01,500,drilled",
            "b,North,2026-08-01,99999,drilled",
            "c,North,2026-08-01,500,drilled",
            "d,North,2026-08-01,500,drilled",
        ),
        lines_csv("a,Buckwheat,2,1", "b,Buckwheat,2,1", "c,Buckwheat,2,0.5"),
    )
    assert faults(load(world.farm, PLANTINGS, files, by=world.owner)) == [
        ("plantings", 2, "sown_on", "This day is still to come."),
        ("plantings", 3, "area_m2", "This is more than the field has."),
        ("plantings", 4, "", "The shares of the mix add up to 50 %, not 100 %."),
        ("plantings", 5, "", "Say what was sown: a kind, or a seed lot."),
    ]


def test_what_is_wrong_with_a_part_is_told_in_its_own_table(world):
    files = both_tables(
        plantings_csv("a,North,2026-08-01,500,drilled"),
        lines_csv("a,Buckwheat,-2,1", "a,Clover,2,1", "z,Buckwheat,2,1", ",,,"),
    )
    told = faults(load(world.farm, PLANTINGS, files, by=world.owner))
    places = {fault[:3] for fault in told}
    assert ("plantings-lines", 3, "kind") in places
    assert ("plantings-lines", 4, "planting") in places
    assert any(fault[:2] == ("plantings-lines", 2) for fault in told)


def test_more_seed_than_a_lot_holds_is_told_at_the_line(world):
    lot = world.ours["seed-lots"]
    lines = f"planting,kind,lot,seed_kg\r\na,{lot.kind.slug},{lot.client_key},500\r\n"
    files = both_tables(plantings_csv("a,North,2026-08-01,500,drilled"), lines)
    (told,) = faults(load(world.farm, PLANTINGS, files, by=world.owner))
    assert told[:3] == ("plantings-lines", 2, "seed_kg")
    assert "The lot does not hold this much." in told[3]


def test_parts_stay_as_they_are_where_their_table_is_not_given(world):
    planting = world.ours["plantings"]
    text = f"record_key,notes\r\n{planting.client_key},late\r\n"
    assert counts(load(world.farm, PLANTINGS, text, by=world.owner)) == (0, 1, 0)
    assert planting.lines.count() == 1


def test_a_changed_part_is_a_change_of_its_record(world):
    files = out(world.farm, PLANTINGS)
    name, data = files["plantings-lines"]
    files["plantings-lines"] = name, data.replace(b",20,", b",21,")
    assert counts(load(world.farm, PLANTINGS, files, by=world.owner)) == (0, 1, 0)
    assert world.ours["plantings"].lines.get().seed_kg == 21
    assert Change.objects.latest("pk").after == {"lines.1.seed_kg": "21.0"}
