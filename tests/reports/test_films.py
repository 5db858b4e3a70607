"""Films and tarps in the papers: the register, the season, what changed."""

import datetime as dt

import pytest
from django.urls import reverse

from farm.units import System
from reports.calc.changes import changes_between
from reports.calc.shapes.basics import Span
from reports.calc.shapes.books import EndOf, Laid
from reports.calc.shapes.changes import Part
from reports.papers.changes import changes_paper
from reports.papers.packet.laid import films
from reports.papers.packet.tables import Books
from tests.calc import books as at
from tests.calc.books import but, day, spoiled
from tests.factories import MulchSheetFactory

SLUG, YEAR = "alder-hill", 2026
TODAY = dt.date(2027, 1, 15)
FILM = Laid(1, 1, "polyethylene", day("05-04"), 4000.0, 1, day("09-25"), "kept")
# Left from the year before, and off this spring.
OLD = but(FILM, id=2, material="tarp", on=day("2025-11-02"), off_on=day("03-20"))
GONE = but(FILM, id=3, on=day("2024-05-04"), off_on=day("2024-10-01"))
OPEN = but(FILM, id=4, on=day("06-01"), off_on=None, went="")
PAPER = but(OPEN, id=5, material="paper", on=day("06-02"))
WOOL = but(FILM, id=6, material="other", words="wool felt", on=day("06-03"))
TARPED = EndOf(5, 1, day("07-14"), "tarped", "on_top", area_m2=100.0)


def rows_of(**told):
    told = films(Books(spoiled(**told), System.METRIC))
    return [dict(zip(map(str, told.headings), row, strict=True)) for row in told.rows]


def test_the_register_tells_each_sheet_that_lay_in_the_season_with_both_its_days():
    rows = rows_of(laid=(FILM, OLD, GONE))
    days = [(row["Laid"], row["Taken off"]) for row in rows]
    assert days == [("2025-11-02", "2026-03-20"), ("2026-05-04", "2026-09-25")]
    assert rows[1]["What grew in it"] == "Buckwheat"
    assert rows[1]["Where it went"] == "kept for use again"


def test_a_missing_day_is_named_where_one_is_due():
    told = [(row["Material"], row["Taken off"]) for row in rows_of(laid=(OPEN, PAPER))]
    assert told == [("polyethylene film", "no day written down"), ("paper", "—")]


def test_a_tarp_that_ended_a_stand_stands_in_the_same_register():
    (row,) = rows_of(ends=(TARPED,))
    assert (row["Laid"], row["Material"]) == ("2026-07-14", "tarp")
    assert row["Taken off"] == "no day written down"


def test_such_a_tarp_is_told_once_where_it_has_a_record_of_its_own():
    its_tarp = but(FILM, material="tarp", on=day("07-14"), off_on=day("08-03"))
    (row,) = rows_of(ends=(TARPED,), laid=(its_tarp,))
    assert row["Taken off"] == "2026-08-03"


def test_what_is_none_of_these_is_told_in_the_farms_words():
    (row,) = rows_of(laid=(WOOL,))
    assert row["Material"] == "wool felt"


def test_a_material_not_used_the_season_before_is_a_change():
    before = Span(day("2025-01-01"), day("2025-12-31"))
    told = {
        one.part: (one.came, one.went)
        for one in changes_between(spoiled(laid=(OLD, WOOL)), before, at.SEASON)
    }
    assert told[Part.SHEETS] == (("wool felt",), ("tarp",))


@pytest.mark.django_db
def test_a_change_of_material_is_said_in_words(world):
    paper = changes_paper(world.farm, YEAR, today=TODAY)
    lines = {one.part: [line.words for line in one.lines] for one in paper["changes"]}
    assert lines[Part.SHEETS] == ["Films and tarps laid. New: polyethylene film"]


@pytest.mark.django_db
def test_the_packet_prints_the_register_and_the_season_names_what_lay(
    world, owner_client
):
    packet = reverse("reports:packet", args=[SLUG, YEAR])
    told = owner_client.get(packet, {"part": "films"}).content.decode()
    assert "2026-05-04" in told
    assert "polyethylene film" in told
    season = owner_client.get(reverse("reports:season", args=[SLUG, YEAR]))
    assert "They are not counted as cover" in season.content.decode()


@pytest.mark.django_db
def test_a_sheet_adds_no_cover_days(world, owner_client):
    season = reverse("reports:season", args=[SLUG, YEAR])
    before = owner_client.get(season).context["page"].totals
    here = {"farm": world.farm, "written_by": world.owner}
    MulchSheetFactory(**here, field=world.ours["fields"], laid_on=day("03-01"))
    assert owner_client.get(season).context["page"].totals == before


@pytest.mark.django_db
def test_a_sheet_left_lying_is_found_and_leads_to_its_record(world, owner_client):
    here = {"farm": world.farm, "written_by": world.owner}
    type(world.farm).objects.update(standard="us")
    lying = MulchSheetFactory(
        **here,
        field=world.ours["fields"],
        laid_on=day("2025-05-04"),
        taken_off_on=None,
        went="",
    )
    address = reverse("reports:findings", args=[SLUG, 2025])
    told = owner_client.get(address).content.decode()
    assert "has no day on which it was taken off" in told
    assert f"/records/mulch-films-and-tarps/{lying.pk}/" in told
    type(world.owner).objects.update(language="es")
    said = owner_client.get(address).content.decode()
    assert "no tiene día en que se quitó" in said
