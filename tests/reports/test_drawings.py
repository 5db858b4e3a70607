"""The season strip and the residue curve, as XML."""

import datetime as dt
import re
from xml.etree import ElementTree

from farm.units import System
from reports.calc.shapes.basics import How, Span
from reports.calc.shapes.season import Ground, Segment, Strip, Tick, TickKind
from reports.drawings import StripRow, mass_curve, season_strip, stretches
from tests.reports import samples

SVG = "{http://www.w3.org/2000/svg}"
YEAR = Span(dt.date(2026, 1, 1), dt.date(2026, 12, 31))


def drawn(*names, ident="a", strip=None):
    rows = [StripRow(name, strip or samples.strip()) for name in names]
    return season_strip(rows, YEAR, ident=ident, title="A season")


def tree(drawing):
    return ElementTree.fromstring(drawing)


def boxes(drawing):
    found = tree(drawing).findall(f"{SVG}rect")
    return [box for box in found if float(box.get("height")) != 10]


def share_of(ground, share):
    return Segment(dt.date(2026, 6, 1), dt.date(2026, 6, 30), ground, share)


def test_a_strip_has_a_name_and_a_description_for_those_who_cannot_see_it():
    root = tree(drawn("North"))
    assert root.get("role") == "img"
    assert root.get("aria-labelledby") == "a-title a-desc"
    assert root.find(f"{SVG}title").text == "A season"
    assert root.find(f"{SVG}desc").text


def test_two_drawings_on_one_page_share_no_name():
    def names(drawing):
        return set(re.findall(r'id="([^"]+)"', drawing))

    assert not names(drawn("North", ident="a")) & names(drawn("North", ident="b"))


def test_every_texture_that_is_used_is_defined():
    drawing = drawn("North")
    used = set(re.findall(r"url\(#([^)]+)\)", drawing))
    assert used <= {row.get("id") for row in tree(drawing).iter(f"{SVG}pattern")}


def test_states_are_told_without_colour():
    drawing = drawn("North")
    inks = set(re.findall(r'(?:fill|stroke)="([^"]+)"', drawing))
    assert all(ink in {"currentColor", "none"} or ink.startswith("url") for ink in inks)


def test_days_still_to_come_are_a_plain_broken_outline():
    late = [row for row in boxes(drawn("North")) if "not_yet" in row.get("class")]
    assert [(row.get("fill"), row.get("stroke-dasharray")) for row in late] == [
        ("none", "2 2")
    ]


def test_half_a_field_is_half_as_high():
    strip = Strip((share_of(Ground.LIVING, 0.5), share_of(Ground.BARE, 0.5)), ())
    heights = {
        box.get("class"): box.get("height") for box in boxes(drawn("N", strip=strip))
    }
    assert heights == {"ground living": "9", "ground bare": "9"}


def test_what_overlaps_is_pressed_into_the_height_of_the_row():
    strip = Strip((share_of(Ground.LIVING, 1.0), share_of(Ground.CASH, 1.0)), ())
    found = stretches(strip, YEAR)
    assert sum(row.height for row in found) == 1
    assert [row.share for row in found] == [1.0, 1.0]


def test_a_ground_that_goes_on_beside_a_change_is_one_stretch():
    living = Segment(dt.date(2026, 5, 1), dt.date(2026, 7, 31), Ground.LIVING, 0.5)
    strip = Strip((living, share_of(Ground.BARE, 0.5)), ())
    found = [row for row in stretches(strip, YEAR) if row.ground is Ground.LIVING]
    assert [(row.first, row.last, row.days) for row in found] == [
        (living.first, living.last, 92)
    ]


def test_stretches_of_a_whole_field_add_up_to_the_season():
    found = stretches(samples.strip(), YEAR)
    assert sum(row.days * row.share for row in found) == YEAR.days


def test_what_lies_outside_the_season_is_cut_off():
    long = Segment(dt.date(2025, 1, 1), dt.date(2027, 12, 31), Ground.BARE, 1)
    (row,) = stretches(Strip((long,), ()), YEAR)
    assert (row.first, row.last) == (YEAR.first, YEAR.last)


def test_a_tick_outside_the_season_is_not_drawn():
    strip = Strip((), (Tick(dt.date(2025, 9, 1), TickKind.SOWN, How.OBSERVED, 1),))
    assert drawn("N", strip=strip).count("<polygon") == drawn(
        "N", strip=Strip((), ())
    ).count("<polygon")


def test_a_mark_is_full_when_seen_and_open_when_worked_out():
    def fill(how):
        strip = Strip((), (Tick(dt.date(2026, 6, 1), TickKind.EMERGED, how, 1),))
        return tree(drawn("N", strip=strip)).find(f"{SVG}circle").get("fill")

    assert (fill(How.OBSERVED), fill(How.HEAT)) == ("currentColor", "none")


def test_every_ground_and_mark_stands_in_the_legend():
    told = " ".join(tree(drawn("North")).itertext())
    for words in ("living cover crop", "cash crop", "residue", "bare soil", "not yet"):
        assert words in told
    for words in ("sown", "emerged", "first flower", "cut to grow back", "ended"):
        assert words in told


def test_a_season_that_starts_in_march_is_marked_from_march():
    season = Span(dt.date(2026, 3, 1), dt.date(2027, 2, 28))
    drawing = season_strip(
        [StripRow("N", Strip((), ()))], season, ident="a", title="A season"
    )
    months = [text.text for text in tree(drawing).findall(f"{SVG}text")][:12]
    assert (months[0], months[-1]) == ("Mar", "Feb")


def test_a_field_name_cannot_write_into_the_drawing():
    drawing = drawn("<script>x</script>", "North")
    assert "<script" not in drawing
    assert tree(drawing) is not None


def test_a_drawing_is_the_same_every_time():
    assert drawn("North", "South") == drawn("North", "South")


def test_a_curve_is_full_for_left_on_top_and_broken_for_worked_in():
    root = tree(mass_curve(samples.choice(), ident="c", system=System.US))
    dashes = [row.get("stroke-dasharray") for row in root.findall(f"{SVG}polyline")]
    assert dashes == ["none", "5 3"]
    told = " ".join(root.itertext())
    assert "left on top" in told and "worked in" in told and "lb/ac" in told


def test_a_curve_is_drawn_in_the_units_of_the_farm():
    assert "t/ha" in mass_curve(samples.choice(), ident="c", system=System.METRIC)


def test_words_at_the_ends_of_a_curve_do_not_lie_on_each_other():
    root = tree(mass_curve(samples.choice(), ident="c", system=System.US))
    heights = {
        text.text: float(text.get("y"))
        for text in root.findall(f"{SVG}text")
        if text.text in {"left on top", "worked in"}
    }
    assert abs(heights["left on top"] - heights["worked in"]) >= 11
