"""The season report from the tables to page, paper and command."""

import datetime as dt
import io

import pypdf
import pytest
from django.core.management import CommandError, call_command

from farm.writing import void
from reports import pdf
from reports.papers.season import season_paper
from tests import world as cast
from tests.factories import AttachmentFactory

TODAY = dt.date(2026, 11, 12)
NOW = dt.datetime(2026, 8, 1, tzinfo=dt.UTC)
PAGE = "/farms/alder-hill/reports/season/2026/"
PAPER = "/farms/alder-hill/reports/season/2026.pdf"
# One for each dated noun among them, for what was written late.
QUERIES = 53


def more_fields(world, names):
    here = {"farm": world.farm, "written_by": world.owner}
    for name in names:
        field = cast.FieldFactory(**here, name=name)
        planting = cast.PlantingFactory(**here, field=field, line__kind=world.ours.kind)
        cast.TerminationFactory(**here, planting=planting)


def words(printed):
    pages = pypdf.PdfReader(io.BytesIO(printed)).pages
    return " ".join(" ".join(page.extract_text() for page in pages).split())


def test_one_field_takes_a_fixed_number_of_queries(world, django_assert_num_queries):
    with django_assert_num_queries(QUERIES):
        season_paper(world.farm, 2026, today=TODAY)


def test_thirty_fields_take_no_more_queries(world, django_assert_num_queries):
    more_fields(world, [f"Field {number}" for number in range(30)])
    with django_assert_num_queries(QUERIES):
        season_paper(world.farm, 2026, today=TODAY)


def test_every_field_and_its_lots_stand_on_the_paper(world, owner_client):
    more_fields(world, ["Long bottom", "Rye hill"])
    answer = owner_client.get(PAPER)
    assert answer["Content-Type"] == "application/pdf"
    told = words(answer.content)
    for name in ("North", "Long bottom", "Rye hill", "BW-26", "Leaf compost"):
        assert name in told


def test_late_entries_and_attachments_stand_on_the_page(world, owner_client):
    """An attachment stays listed when it is struck out, or the record it is of."""
    here = {"farm": world.farm, "written_by": world.owner}
    lot, day = world.ours["stock-counts"], dt.date(2026, 7, 1)
    of_lot = {"noun": "stockcount", "object_id": lot.pk}
    cast.TrainingFactory(**here, trained_on=dt.date(2026, 3, 1), topic="Ladders")
    AttachmentFactory(**here, **of_lot, taken_on=day, shows="The scale")
    wrong = AttachmentFactory(**here, taken_on=day, shows="Another barn")
    void(wrong, by=world.owner, now=NOW, reason="not ours")
    void(lot, by=world.owner, now=NOW, reason="counted twice")
    page = " ".join(owner_client.get(PAGE).content.decode().split())
    late = page.partition('id="late"')[2].partition("</section>")[0]
    kept = page.partition('id="attachments"')[2].partition("</section>")[0]
    assert "2026-03-01" in late and "Ladders" in late
    assert "The scale" in kept and "counted twice" in kept
    assert "Another barn" in kept and "not ours" in kept


def test_every_field_stands_on_the_page(world, owner_client):
    more_fields(world, ["Long bottom"])
    page = owner_client.get(PAGE).content.decode()
    assert "Long bottom" in page and "<svg" in page
    assert page.count("<h1") == 1


def test_no_style_and_no_script_is_written_into_the_page(world, owner_client):
    page = owner_client.get(PAGE).content.decode()
    assert "<style" not in page and " style=" not in page
    assert "<script>" not in page


def test_every_table_has_a_caption_and_every_heading_cell_a_scope(world, owner_client):
    page = owner_client.get(PAGE).content.decode()
    assert page.count("<table") == page.count("<caption")
    assert page.count("<th ") == page.count("<th scope=")
    assert "<th>" not in page


def test_an_inspector_may_read_and_a_stranger_finds_nothing(world, as_person):
    assert as_person(world.inspector).get(PAGE).status_code == 200
    assert as_person(world.stranger).get(PAGE).status_code == 404
    assert as_person(world.stranger).get(PAPER).status_code == 404


@pytest.mark.parametrize("year", ["0000", "1899", "99999", "2100"])
def test_a_year_that_no_farm_kept_is_not_found(world, owner_client, year):
    answer = owner_client.get(f"/farms/alder-hill/reports/season/{year}/")
    assert answer.status_code == 404


def test_a_season_without_records_is_still_a_page_and_a_paper(world, owner_client):
    address = "/farms/alder-hill/reports/season/1999"
    assert owner_client.get(f"{address}/").status_code == 200
    assert owner_client.get(f"{address}.pdf").status_code == 200


def test_a_farm_without_fields_gets_a_page_and_a_paper(db, as_person):
    member = cast.MembershipFactory(farm__slug="bare", farm__name="Bare")
    client = as_person(member.user)
    assert client.get("/farms/bare/reports/season/2026/").status_code == 200
    assert client.get("/farms/bare/reports/season/2026.pdf").status_code == 200


def test_seasons_run_back_to_the_first_planting(world, owner_client):
    cast.PlantingFactory(
        farm=world.farm,
        written_by=world.owner,
        field=world.ours["fields"],
        sown_on=dt.date(2019, 5, 1),
    )
    page = owner_client.get("/farms/alder-hill/reports/season/").content.decode()
    assert "season/2019/" in page and "season/2018/" not in page


def test_a_page_says_what_to_install_when_text_cannot_be_drawn(
    world, owner_client, monkeypatch
):
    def missing(name):
        raise OSError("cannot load library")

    monkeypatch.setattr(pdf.printing.importlib, "import_module", missing)
    answer = owner_client.get(PAPER)
    assert answer.status_code == 503
    assert "libpango" in answer.content.decode()


def test_the_command_writes_what_the_page_prints(world, tmp_path):
    kept = tmp_path / "season.pdf"
    call_command("print_season", "alder-hill", "2026", "-o", kept, "--today=2026-11-12")
    paper = season_paper(world.farm, 2026, today=TODAY)
    assert kept.read_bytes() == pdf.print_paper("season_print", paper)


def test_the_command_says_when_there_is_no_such_farm(db, tmp_path):
    with pytest.raises(CommandError, match="no farm called nowhere"):
        call_command("print_season", "nowhere", "2026", "-o", tmp_path / "x.pdf")
