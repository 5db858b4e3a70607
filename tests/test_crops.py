"""Whether the catalogue keeps to its lists and to the tables it cites."""

import csv
import json
from collections import Counter

import pytest

from reports.calc.sources import SOURCES
from tests.catalogue import FIGURES, KINDS, TEXT, figures
from tests.crop_lists import (
    ATTRIBUTES,
    CAUTIONS,
    FEDERAL,
    HANDBOOK_NAMES,
    HANDBOOK_UNITS,
    SPECIES,
    STAGES,
    UNITS,
)
from tests.places import DATA, shared_data


def test_common_practice_is_said_beside_the_figure():
    rows = [row for _, row in FIGURES if row["source"] == "COMMON"]
    assert rows
    assert all("common practice" in row["note"] for row in rows)


def test_the_catalogue_has_twenty_cover_kinds_and_twenty_cash_kinds():
    uses = Counter(kind["use"] for kind in KINDS)
    assert uses["cover"] >= 20
    assert uses["cash"] >= 20
    assert set(uses) == {"cover", "cash", "both"}


def test_no_slug_or_name_stands_twice_and_kinds_are_in_order():
    slugs = [kind["slug"] for kind in KINDS]
    assert slugs == sorted(set(slugs))
    for name in ("name", "name_es"):
        assert len({kind[name] for kind in KINDS}) == len(KINDS)


def test_groups_seasons_attributes_units_stages_and_cautions_are_from_closed_lists():
    for kind in KINDS:
        assert kind["group"] in {"grass", "legume", "brassica", "broadleaf"}
        assert kind["season"] in {"warm", "cool"}
        assert {row["caution"] for row in kind["cautions"]} <= CAUTIONS
    for slug, row in FIGURES:
        assert row["unit"] in UNITS, (slug, row)
        assert row["attribute"] in ATTRIBUTES, (slug, row)
        assert row.get("stage", "") in STAGES, (slug, row)
        assert len(row.get("note", "")) <= 120, (slug, row)


def test_every_figure_is_a_number_or_a_range_that_rises():
    for slug, row in FIGURES:
        assert isinstance(row["low"], int | float), (slug, row)
        assert row["low"] <= row["high"], (slug, row)


def test_no_figure_is_given_twice():
    keys = Counter(
        (slug, r["attribute"], r.get("stage", ""), r["source"], r["unit"], r["low"])
        for slug, r in FIGURES
    )
    assert [key for key, times in keys.items() if times > 1] == []


def test_a_figure_from_memory_never_comes_before_one_that_was_read():
    for kind in KINDS:
        for attribute in ATTRIBUTES:
            marks = [
                row["unverified"]
                for row in kind["figures"]
                if row["attribute"] == attribute
            ]
            assert marks == sorted(marks), (kind["slug"], attribute)


def test_each_figure_stands_on_a_line_of_its_own():
    lines = [line for line in TEXT.splitlines() if '"attribute"' in line]
    assert [json.loads(line.strip().rstrip(",")) for line in lines] == [
        row for _, row in FIGURES
    ]


def handbook_rows():
    path = DATA.parent / "reference" / "species.csv"
    if not path.exists():
        pytest.skip("the table of handbook figures is not beside the checkout")
    with path.open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def stands_in(row, handbook):
    """Whether a figure equals a row of the handbook table."""
    names = HANDBOOK_NAMES.get(row["attribute"], set()) | {row["attribute"]}
    for line in handbook:
        if line["source_key"] != row["source"] or line["attribute"] not in names:
            continue
        if row["unverified"] != (line["read_or_memory"] == "memory"):
            continue
        if row["attribute"] == "perennial":
            return "perennial" in line["low"]
        if row["attribute"] == "heat_needed_base":
            return line["unit"].endswith(f"base {row['low']} F")
        unit = HANDBOOK_UNITS.get(line["unit"], line["unit"]).replace(" N/ha", "/ha")
        ends = (float(line["low"]), float(line["high"] or line["low"]))
        same = (row["low"], row["high"]) == ends
        # One row holds both mustards; each kind keeps its own end.
        of_two = row["attribute"].startswith("germ_test") and "mustard" in str(line)
        if unit.startswith(row["unit"].replace(" N/ha", "/ha")) and (
            same or (of_two and row["low"] in ends)
        ):
            return True
    return False


def handbook_types():
    """What the handbook table calls each of our kinds that it has: annual or not."""
    told = {
        line["species"]: line["low"]
        for line in handbook_rows()
        if line["attribute"] == "type"
    }
    return {slug: told[name] for slug, name in SPECIES.items() if name in told}


def test_kinds_stand_for_years_just_where_the_handbook_table_calls_them_perennial():
    types = handbook_types()
    said = {slug for slug, row in FIGURES if row["attribute"] == "perennial"}
    assert {slug for slug, words in types.items() if "perennial" in words} == {
        "red-clover",
        "white-clover",
    }
    assert {slug for slug in said if "annual" in types.get(slug, "")} == set()
    assert {slug for slug, words in types.items() if "perennial" in words} <= said
    # The table has neither; each cites a page of its own.
    assert said - set(types) == {"alfalfa", "strawberry"}


def test_figures_that_cite_the_handbook_table_equal_a_row_there():
    rows = handbook_rows()
    keys = {line["source_key"] for line in rows}
    astray = []
    for slug, row in FIGURES:
        if slug not in SPECIES or row["source"] not in keys:
            continue
        own = [line for line in rows if line["species"] in (SPECIES[slug], "general")]
        if not stands_in(row, own):
            astray.append((slug, row))
    assert astray == []


def test_engineered_kinds_are_those_of_the_federal_list_that_are_in_the_catalogue():
    """7 CFR 66.6, list of bioengineered foods, as amended at 88 FR 83311 (2023).

    Of those listed we have alfalfa, corn, eggplant, potato, soybean and summer squash.
    """
    listed = {
        slug
        for slug, row in FIGURES
        if row["attribute"] == "engineered_sold" and row["source"] == "CFR66.6"
    }
    assert listed == {
        *("alfalfa", "eggplant", "field-corn", "potato", "soybean", "soybean-grain"),
        *("summer-squash", "sweet-corn"),
    }


def test_no_figure_comes_from_a_row_that_is_not_to_be_used():
    assert "V-HOLLAND" not in SOURCES
    assert figures("pearl-millet", "seeding_rate_any", "UGA") == []


def test_seeds_per_gram_equal_the_federal_table():
    path = shared_data("seed/fsa_seeds_per_gram.csv")
    with path.open(encoding="utf-8", newline="") as file:
        federal = {row["kind"]: row["seeds_per_gram"] for row in csv.DictReader(file)}
    for slug, name in FEDERAL.items():
        ends = [float(part) for part in federal[name].split("-") if part]
        expected = [(ends[0], ends[-1])] if ends else []
        assert figures(slug, "seeds_per_gram", "CFR201.46") == expected, slug


@pytest.mark.parametrize(
    ("slug", "per_gram"),
    [
        ("lettuce", 890),
        ("spinach", 100),
        ("carrot", 825),
        ("beet", 60),
        ("onion", 340),
        ("tomato", 405),
        ("cabbage", 315),
        ("cucumber", 40),
        ("pumpkin", 5),
        ("garden-pea", 3),
    ],
)
def test_vegetable_seeds_per_gram_are_those_of_7_cfr_201_46(slug, per_gram):
    assert figures(slug, "seeds_per_gram", "CFR201.46") == [(per_gram, per_gram)]


@pytest.mark.parametrize(
    ("slug", "per_pound"),
    [
        ("buckwheat", 20412),
        ("cereal-rye", 18144),
        ("winter-wheat", 11340),
        ("barley", 13608),
        ("hairy-vetch", 15876),
        ("crimson-clover", 149685),
        ("red-clover", 272155),
        ("annual-ryegrass", 190509),
        ("white-mustard", 72575),
        ("brown-mustard", 283495),
        ("sorghum-sudangrass", 17237),
    ],
)
def test_seeds_in_a_pound_follow_from_7_cfr_201_46(slug, per_pound):
    [(low, _)] = figures(slug, "seeds_per_gram", "CFR201.46")
    assert round(low * 453.59237) == per_pound


@pytest.mark.parametrize(
    ("attribute", "per_square_foot"),
    [("seeding_rate_drilled", 23.43), ("seeding_rate_broadcast", 32.80)],
)
def test_cornells_buckwheat_rates_are_so_many_seeds_a_square_foot(
    attribute, per_square_foot
):
    [(rate, _)] = figures("buckwheat", attribute, "CORN-BW")
    [(per_gram, _)] = figures("buckwheat", "seeds_per_gram", "CFR201.46")
    assert rate * per_gram * 453.59237 / 43560 == pytest.approx(
        per_square_foot, abs=0.005
    )


@pytest.mark.parametrize(
    ("slug", "first", "final"),
    [
        ("buckwheat", 3, 6),
        ("hairy-vetch", 5, 14),
        ("oats", 5, 10),
        ("field-pea", 3, 8),
        ("white-mustard", 3, 5),
        ("brown-mustard", 3, 7),
        ("carrot", 6, 14),
    ],
)
def test_germination_tests_are_counted_on_the_days_of_7_cfr_201_58(slug, first, final):
    assert figures(slug, "germ_test_first_count", "CFR201.58") == [(first, first)]
    assert figures(slug, "germ_test_final_count", "CFR201.58") == [(final, final)]


@pytest.mark.parametrize(
    ("slug", "source", "percent"),
    [
        ("buckwheat", "WVSEED", 80),
        ("crimson-clover", "WVSEED", 75),
        ("oats", "WVSEED", 75),
        ("cereal-rye", "WVSEED", 70),
        ("cowpea", "WVSEED", 65),
        ("lettuce", "CFR201.31", 80),
        ("carrot", "CFR201.31", 55),
        ("pepper", "CFR201.31", 55),
    ],
)
def test_seed_for_sale_must_germinate_as_state_and_federal_rules_say(
    slug, source, percent
):
    assert figures(slug, "germination_standard", source) == [(percent, percent)]


@pytest.mark.parametrize(
    ("stage", "drilled", "broadcast"),
    [
        ("by_0915", 60, 85),
        ("by_0922", 100, 140),
        ("by_1001", 140, 200),
        ("by_1015", 180, 250),
    ],
)
def test_rye_is_sown_thicker_the_later_it_is_by_cornells_page(
    stage, drilled, broadcast
):
    rye = ("cereal-rye", "seeding_rate_{}", "CORN-RYE", stage)
    for method, rate in (("drilled", drilled), ("broadcast", broadcast)):
        assert figures(rye[0], rye[1].format(method), *rye[2:]) == [(rate, rate)]


@pytest.mark.parametrize(
    ("slug", "stage", "ratio"),
    [
        ("hairy-vetch", "", 11),
        ("cereal-rye", "vegetative", 26),
        ("cereal-rye", "anthesis", 37),
        ("oats", "straw", 70),
        ("winter-wheat", "straw", 80),
        ("cereal-rye", "straw", 82),
    ],
)
def test_carbon_to_nitrogen_is_that_of_the_nrcs_table(slug, stage, ratio):
    assert figures(slug, "cn_ratio", "NRCS-CN", stage) == [(ratio, ratio)]


def test_a_bushel_of_buckwheat_is_50_pounds_in_indiana_and_42_in_north_dakota():
    assert figures("buckwheat", "bushel_weight", "IC-24-6-1-1") == [(50, 50)]
    assert figures("buckwheat", "bushel_weight", "NDCC-64-01-05") == [(42, 42)]


def test_buckwheat_is_mown_day_35_to_40_and_worked_in_by_day_45_in_cornells_handbook():
    assert figures("buckwheat", "full_bloom_days", "CORN-HB-KEY") == [(35, 35)]
    assert figures("buckwheat", "mow_window_days", "CORN-HB-KEY") == [(35, 40)]
    assert figures("buckwheat", "work_in_window_days", "CORN-HB-KEY") == [(35, 45)]
