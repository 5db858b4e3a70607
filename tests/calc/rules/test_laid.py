"""Films and tarps: what must come off, by when, and of what they may be made.

7 CFR 205.206(c)(6) lets plastic and other synthetic mulches be used where they are
taken off the field at the end of the growing or harvest season; (c)(1) names mulching
with fully biodegradable materials beside it. 7 CFR 205.601(b)(2) lists paper without
glossy or coloured ink, and plastic other than PVC.
"""

import datetime as dt

import pytest

from reports.calc.rules import findings
from reports.calc.rules.dates import last_of_season
from reports.calc.shapes import books as rows
from reports.calc.shapes.basics import Span
from reports.calc.shapes.rules import Matter, RuleId, RuleSet, Severity
from tests.calc import books as at
from tests.calc.books import but, day, rule, spoiled

FILM = rows.Laid(1, 1, "polyethylene", day("05-04"), 4000.0)
# Set out in autumn and cut the summer after.
GARLIC = but(at.STAND, id=3, sown_on=day("2025-10-05"))
GARLIC_CUT = rows.EndOf(9, 3, day("07-06"), "harvested", "removed")
UNDER_GARLIC = but(FILM, on=day("2025-10-05"), stand_id=3)
BERRIES = but(at.STAND, id=4, sown_on=day("2025-04-20"))
PICKED = but(at.CROP, id=4, stand_id=4)
UNDER_BERRIES = but(FILM, material="fabric", on=day("2025-04-20"), stand_id=4)
TARPED = rows.EndOf(5, 1, day("07-14"), "tarped", "on_top")
ITS_TARP = but(FILM, material="tarp", on=day("07-14"), off_on=day("08-03"), stand_id=1)

STOP, FIX, WARN = Severity.STOP, Severity.FIX, Severity.WARN
LEFT, LATE, UNDER = Matter.TARP_LEFT, Matter.TARP_LATE, Matter.TARP_UNDER


def laid(*sheets, **told):
    return spoiled(laid=sheets or (but(FILM, **told),))


def with_garlic(film, *ends):
    return spoiled(stands=(at.STAND, GARLIC), ends=ends, laid=(film,))


def with_berries(film):
    told = {"stands": (at.STAND, BERRIES), "crops": (at.CROP, PICKED)}
    return spoiled(**told, laid=(film,))


SEASONS = [
    ("off within its season", laid(off_on=day("09-25")), None),
    ("off on the season's last day", laid(off_on=day("12-31")), None),
    ("off the day after", laid(off_on=day("2027-01-01")), (LATE, WARN)),
    ("no day, and the season is over", laid(), (LEFT, FIX)),
    ("no day, on the season's last day", but(laid(), today=day("12-31")), None),
    ("no day, the morning after", but(laid(), today=day("2027-01-01")), (LEFT, FIX)),
    ("fabric", laid(material="fabric"), (LEFT, FIX)),
    ("a tarp on bare ground", laid(material="tarp"), (LEFT, FIX)),
    (
        "a tarp laid in autumn for a clean bed in spring: look again",
        laid(material="tarp", on=day("10-20")),
        (LEFT, WARN),
    ),
    ("paper may rot where it lies", laid(material="paper"), None),
    ("so may film that is approved for it", laid(material="biodegradable"), None),
    ("something else: look again", laid(material="other", words="wool"), (LEFT, WARN)),
    ("laid the year before, and still there", laid(on=day("2025-04-02")), (LEFT, FIX)),
    (
        "laid and off before this season",
        laid(on=day("2024-04-02"), off_on=day("2025-11-30")),
        None,
    ),
    (
        "off only this season, of the season before",
        laid(on=day("2025-04-02"), off_on=day("03-01")),
        (LATE, WARN),
    ),
    ("worked in", laid(off_on=day("09-01"), went="worked_in"), None),
    (
        "under garlic over winter, off after harvest",
        with_garlic(but(UNDER_GARLIC, off_on=day("07-10")), GARLIC_CUT),
        None,
    ),
    (
        "under garlic over winter, and still there",
        with_garlic(UNDER_GARLIC, GARLIC_CUT),
        (LEFT, FIX),
    ),
    (
        "under garlic that stands over the year's end",
        but(
            with_garlic(UNDER_GARLIC),
            season=Span(day("2025-01-01"), day("2025-12-31")),
            today=day("2026-01-15"),
        ),
        None,
    ),
    ("under berries that stand", with_berries(UNDER_BERRIES), (UNDER, WARN)),
    (
        "under berries, taken off while they stand",
        with_berries(but(UNDER_BERRIES, off_on=day("2027-01-10"))),
        None,
    ),
    (
        "on ground that is not organic",
        but(laid(), fields=(but(at.GROUND, status="not_organic"),)),
        None,
    ),
    ("a tarp that ended a stand", spoiled(ends=(TARPED,)), (LEFT, FIX)),
    (
        "the same, off in the season",
        spoiled(ends=(but(TARPED, tarp_removed_on=day("08-03")),)),
        None,
    ),
    (
        "the same, off too late",
        spoiled(ends=(but(TARPED, tarp_removed_on=day("2027-01-03")),)),
        (LATE, WARN),
    ),
    (
        "the same, told by a record of the tarp itself",
        spoiled(ends=(TARPED,), laid=(ITS_TARP,)),
        None,
    ),
]


def told(books, id_, set_=RuleSet.ORGANIC_US):
    found = findings(books, [rule(id_, set_)])
    return [(one.found.matter, one.severity) for one in found]


NAMES = [one[0] for one in SEASONS]


@pytest.mark.parametrize(("_what", "books", "asked"), SEASONS, ids=NAMES)
def test_what_does_not_rot_comes_off_by_the_end_of_the_season_it_served(
    _what, books, asked
):
    said = [one for one in told(books, RuleId.TARP) if one[0] in (LEFT, LATE, UNDER)]
    assert said == ([asked] if asked else [])


def test_plastic_worked_into_the_soil_is_told_and_paper_is_not():
    gone = {"off_on": day("09-01"), "went": "worked_in"}
    plastic, paper = laid(**gone), laid(material="paper", **gone)
    assert told(plastic, RuleId.TARP) == [(Matter.SHEET_WORKED_IN, FIX)]
    assert told(paper, RuleId.TARP) == []


MATERIALS = [
    ("pvc", "", [(Matter.SHEET_PVC, STOP)]),
    ("pvc", "Letter of May", [(Matter.SHEET_PVC, STOP)]),
    ("biodegradable", "", [(Matter.SHEET_UNAPPROVED, FIX)]),
    ("biodegradable", "Letter of May", []),
    ("other", "", [(Matter.SHEET_UNAPPROVED, WARN)]),
    ("polyethylene", "", []),
    ("fabric", "", []),
    ("tarp", "", []),
    ("paper", "", []),
]


@pytest.mark.parametrize(("material", "approval", "asked"), MATERIALS)
@pytest.mark.parametrize("set_", [RuleSet.ORGANIC_US, RuleSet.ORGANIC_CA])
def test_pvc_stops_and_what_must_be_approved_is_asked_for(
    material, approval, asked, set_
):
    books = laid(material=material, approval=approval, words="wool")
    assert told(books, RuleId.SHEET_MATERIAL, set_) == asked


def test_the_certifier_may_give_days_after_the_season():
    given = rule(RuleId.TARP, RuleSet.ORGANIC_US).overruled("after_days", 30)
    for off, count in (("2027-01-30", 0), ("2027-01-31", 1)):
        assert len(findings(laid(off_on=day(off)), [given])) == count


@pytest.mark.parametrize(
    ("days", "on", "weight"),
    [
        (120, "09-03", WARN),
        (120, "09-02", FIX),
        (0, "12-31", FIX),
        (60, "11-02", WARN),
        (60, "11-01", FIX),
        (240, "05-06", WARN),
        (240, "05-05", FIX),
    ],
)
@pytest.mark.parametrize("set_", [RuleSet.ORGANIC_US, RuleSet.ORGANIC_CA])
def test_how_late_a_sheet_is_laid_for_spring_is_the_certifiers_to_say(
    set_, days, on, weight
):
    """120 days are our own; the season ends on 31 December."""
    given = rule(RuleId.TARP, set_).overruled("late_days", days)
    (one,) = findings(laid(on=day(on)), [given])
    assert (one.found.matter, one.severity) == (LEFT, weight)


@pytest.mark.parametrize(
    ("months", "on", "asked"),
    [
        (12, "2025-04-20", [UNDER]),
        (36, "2025-04-20", []),
        (36, "2023-04-20", [UNDER]),
        (0, "2026-04-20", [UNDER]),
    ],
)
def test_how_long_a_sheet_may_lie_under_berries_is_the_certifiers_to_say(
    months, on, asked
):
    """A season is our own; on 15 January 2027 the books of 2026 are looked at."""
    given = rule(RuleId.TARP, RuleSet.ORGANIC_US).overruled("stand_months", months)
    told = findings(with_berries(but(UNDER_BERRIES, on=day(on))), [given])
    assert [one.found.matter for one in told] == asked


@pytest.mark.parametrize("days", [-1, 241])
def test_days_out_of_range_are_not_taken_from_the_certifier(days):
    asked = rule(RuleId.TARP, RuleSet.ORGANIC_US)
    with pytest.raises(ValueError, match="late_days"):
        asked.overruled("late_days", days)


def test_the_finding_leads_to_the_record_that_mends_it():
    (film,) = findings(laid(), [rule(RuleId.TARP)])
    (tarp,) = findings(spoiled(ends=(TARPED,)), [rule(RuleId.TARP)])
    assert (film.found.noun, film.found.record) == ("mulch-films-and-tarps", 1)
    assert (tarp.found.noun, tarp.found.record) == ("terminations", 5)


@pytest.mark.parametrize(
    ("on", "first", "last"),
    [
        ("2026-05-04", "2026-01-01", "2026-12-31"),
        ("2024-12-31", "2026-01-01", "2024-12-31"),
        ("2024-02-29", "2026-03-01", "2024-02-29"),
        ("2024-03-01", "2026-03-01", "2025-02-28"),
        ("2027-11-02", "2026-10-01", "2028-09-30"),
    ],
)
def test_a_season_ends_on_the_day_before_the_next_begins(on, first, last):
    days = [dt.date.fromisoformat(text) for text in (on, first, last)]
    assert last_of_season(days[0], first=days[1]) == days[2]
