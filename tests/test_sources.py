"""Whether every figure leads back to a source, and every source is used."""

import re

from reports.calc.assumptions import CHOICES
from reports.calc.rules import RULES
from reports.calc.sources import ENTRIES, SOURCES, Tier
from tests.catalogue import sourced
from tests.places import ROOT

CALC = ROOT / "reports" / "calc"
BRACKETED = r"\[([A-Z][A-Z0-9.\-]+)\]"
# The units cite the Federal Register by its own number.
WRITTEN_OUT = {"85 FR 62698": "NIST-ACRE"}
# Rooms not built yet, and the entries kept for them until they stand.
AWAITED = {
    "erosion": {"CFACTOR"},
    "frost": {
        "HYNDMAN96",
        "NCEI-NORMALS",
        "NSSH",
        "SHARPSHOOTR",
        "VICTORY-NOAA",
        "XCLIM",
    },
}


def citations():
    """Keys cited as [KEY]_ in a docstring or [KEY] in a comment of a formula."""
    found = set()
    for path in [*CALC.rglob("*.py"), *(ROOT / "farm" / "units").rglob("*.py")]:
        if CALC / "sources" in path.parents:
            continue
        text = path.read_text(encoding="utf-8")
        found |= {(key, path.name) for way, key in WRITTEN_OUT.items() if way in text}
        for line in text.splitlines():
            _, _, comment = line.partition("#")
            found |= {(key, path.name) for key in re.findall(BRACKETED + "_", line)}
            found |= {(key, path.name) for key in re.findall(BRACKETED, comment)}
    return found


def test_no_key_is_given_to_two_entries():
    assert len(ENTRIES) == len(SOURCES)


def test_every_figure_name_and_caution_names_a_source_that_exists():
    assert {row["source"] for _, row in sourced()} <= set(SOURCES)


def test_every_key_cited_beside_a_formula_exists():
    assert {(key, name) for key, name in citations() if key not in SOURCES} == set()


def test_every_choice_of_ours_leans_on_a_source_that_exists():
    assert {choice.source for choice in CHOICES} <= set(SOURCES)


def test_every_rule_names_a_source_that_exists():
    assert {rule.source for rule in RULES} <= set(SOURCES)


def test_every_entry_of_the_bibliography_is_used():
    used = {row["source"] for _, row in sourced()} | {key for key, _ in citations()}
    used |= {rule.source for rule in RULES}
    waiting = {
        key
        for room, keys in AWAITED.items()
        if not list(CALC.glob(f"{room}*"))
        for key in keys
    }
    assert sorted(set(SOURCES) - used - waiting) == []


def test_what_is_from_memory_is_marked_unverified():
    plain = [
        (slug, row)
        for slug, row in sourced()
        if SOURCES[row["source"]].tier is Tier.M and not row["unverified"]
    ]
    assert plain == []


def test_what_was_read_is_not_marked_unverified():
    for slug, row in sourced():
        assert row["unverified"] == (SOURCES[row["source"]].tier is Tier.M), (slug, row)


def test_only_memory_practice_and_our_own_choices_have_no_page_that_was_read():
    unread = {source.tier for source in ENTRIES if not source.read}
    assert unread <= {Tier.M, Tier.COMMON, Tier.ASSUMED, Tier.A}
    assert {s.key for s in ENTRIES if not s.read and s.tier is Tier.A} == {"HYNDMAN96"}
