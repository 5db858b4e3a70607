"""The papers for certification: every part, alone and together, and told again."""

import csv
import datetime as dt
import io
import re

import pikepdf
import pypdf
import pytest
from django.core.cache import caches
from django.core.files.uploadedfile import SimpleUploadedFile
from django.db import connection, transaction
from django.template.loader import render_to_string
from django.test.utils import CaptureQueriesContext
from django.urls import reverse

from farm.units import System
from records.models import PrintedPaper
from reports.calc.changes import changes_between
from reports.calc.shapes.basics import Span
from reports.calc.shapes.books.land import Side
from reports.calc.shapes.changes import Part
from reports.labels.packet import SECTIONS
from reports.ledger.late import late_entries
from reports.papers.packet import packet_paper
from reports.papers.packet.ground import edges
from reports.papers.packet.sheets import sheets
from reports.papers.packet.tables import Books, Register, Section
from reports.papers.packet.told import printed_sections
from reports.prints import packet
from reports.prints.packet import is_long, print_packet
from reports.templatetags.registers import FIGURES
from tests.calc import books as at
from tests.calc.books import but, day, spoiled
from tests.factories import (
    ApplicationFactory,
    FarmFactory,
    FieldFactory,
    PlantingFactory,
    TrainingFactory,
)
from tests.reports.accessible import faults_of, heading_levels, skips
from tests.reports.margins import needs_poppler, told_margins_pt, words_beyond

OUTLINE = {
    "type": "Polygon",
    "coordinates": [
        [[-100.0, 40.0], [-99.999, 40.0], [-99.999, 40.001], [-100.0, 40.0]]
    ],
}
SLUG, YEAR = "alder-hill", 2026
TODAY = dt.date(2027, 1, 15)


@pytest.mark.django_db
@pytest.mark.parametrize("key", SECTIONS)
def test_every_part_can_be_had_alone(key, world, owner_client):
    page = owner_client.get(reverse("reports:packet", args=[SLUG, YEAR]), {"part": key})
    assert [one.key for one in page.context["sections"]] == [key]
    assert page.status_code == 200


@pytest.mark.django_db
def test_all_parts_are_there_where_none_is_chosen_or_none_is_known(world):
    for chosen in ((), ("nonsense",)):
        paper = packet_paper(world.farm, YEAR, today=TODAY, chosen=chosen)
        assert [one.key for one in paper["sections"]] == list(SECTIONS)


@pytest.mark.django_db
def test_registers_hold_what_was_written_down(world, owner_client):
    # The bibliography names papers by their titles, whatever words stand in them.
    parts = {"part": [key for key in SECTIONS if key != "sources"]}
    page = owner_client.get(reverse("reports:packet", args=[SLUG, YEAR]), parts)
    told = page.content.decode()
    for words in ("BW-26", "Squash", "Cold room", "Leaf compost", "A. Hand"):
        assert words in told
    assert "complian" not in told.lower()


@pytest.mark.django_db
def test_a_season_without_records_prints_that_none_is_recorded(world, owner_client):
    page = owner_client.get(reverse("reports:packet", args=[SLUG, 1999]))
    assert page.content.decode().count("None recorded.") > 10


@pytest.mark.django_db
def test_the_packet_asks_the_same_for_one_field_or_many(world):
    def queries():
        with CaptureQueriesContext(connection) as asked:
            packet_paper(world.farm, YEAR, today=TODAY)
        return len(asked)

    before = queries()
    for _ in range(3):
        field = FieldFactory(farm=world.farm, written_by=world.owner)
        PlantingFactory(farm=world.farm, field=field)
        ApplicationFactory(farm=world.farm, field=field)
    assert queries() == before


@pytest.mark.django_db
def test_a_printed_packet_is_known_again_and_a_changed_one_is_not(world, owner_client):
    at_ = reverse("reports:packet-pdf", args=[SLUG, YEAR])
    printed = owner_client.get(at_, {"part": ["land", "attestation"]}).content
    assert printed.startswith(b"%PDF")
    kept = PrintedPaper.objects.get(farm=world.farm)
    assert (kept.sections, kept.bytes) == ("attestation land", len(printed))
    again = owner_client.get(at_, {"part": ["land", "attestation"]}).content
    assert again == printed
    assert PrintedPaper.objects.count() == 1
    verify = reverse("reports:verify", args=[SLUG])

    def asked(data):
        file = SimpleUploadedFile("x.pdf", data, "application/pdf")
        return owner_client.post(verify, {"file": file}).content.decode()

    assert "Found: Papers for certification, season 2026" in asked(printed)
    altered = asked(printed[:-1] + b"?")
    assert "Not found" in altered and "It is no PDF" not in altered
    assert "It is no PDF" in asked(b"a letter")
    assert owner_client.post(verify, {}).status_code == 200


@pytest.fixture(scope="module")
def printed(django_db_setup, django_db_blocker):
    """The whole packet of a small farm, as it is handed out."""
    with django_db_blocker.unblock(), transaction.atomic():
        farm = FarmFactory(name="Reed & “Sons”", slug="reed")
        field = FieldFactory(farm=farm, outline=OUTLINE)
        for _ in range(3):
            PlantingFactory(farm=farm, field=field)
            ApplicationFactory(farm=farm, field=field)
        paper = packet_paper(farm, YEAR, today=TODAY, by="A. Hand")
        data = print_packet(paper)
        caches["pieces"].delete(f"whole-{farm.pk}-{YEAR}")
        again = print_packet(paper)
        transaction.set_rollback(True)
    return data, again, paper


def test_two_checkers_of_pdf_ua_1_find_no_fault_in_the_packet(printed, tmp_path):
    """ISO 14289-1, as page-validation and pdfua hold a file against it."""
    assert faults_of(printed[0], tmp_path) == set()
    assert skips(heading_levels(printed[0])) == []


def test_the_same_packet_gives_the_same_bytes(printed):
    assert printed[0] == printed[1]


def test_every_page_is_numbered_and_the_contents_name_the_right_one(printed):
    reader = pypdf.PdfReader(io.BytesIO(printed[0]))
    texts = [" ".join(page.extract_text().split()) for page in reader.pages]
    last = len(texts)
    for number, text in enumerate(texts, start=1):
        assert f"page{number}of{last}" in text.replace(" ", "")
        assert len(text) > 80
    marks = [mark for mark in reader.outline if not isinstance(mark, list)]
    told = [one.title for one in printed_sections(printed[2]["sections"])]
    assert [mark.title for mark in marks] == told
    assert all(str(one) in " ".join(texts) for one in SECTIONS.values())
    contents = texts[1]
    for mark in marks:
        page = reader.get_destination_page_number(mark) + 1
        assert mark.title in texts[page - 1]
        assert re.search(rf"{re.escape(mark.title)}[ .]+{page}\b", contents)


@needs_poppler
def test_no_word_of_a_packet_stands_beyond_the_margin(printed, tmp_path):
    css = render_to_string("reports/packet_print.css", printed[2])
    side_pt, _foot_pt = told_margins_pt(css)
    beyond, words = words_beyond(printed[0], side_pt, tmp_path)
    assert words > 100
    assert beyond == []


def test_links_of_the_contents_lead_to_pages_of_the_file(printed):
    with pikepdf.open(io.BytesIO(printed[0])) as pdf:
        pages = {page.obj.objgen for page in pdf.pages}
        links = [link for page in pdf.pages for link in page.obj.get("/Annots", ())]
        inside = [link for link in links if "/Dest" in link]
        assert len(inside) >= len(printed_sections(printed[2]["sections"]))
        for link in inside:
            if not isinstance(link.Dest, pikepdf.String):
                assert link.Dest[0].objgen in pages
        assert not any("elsewhere" in str(link.get("/A", "")) for link in links)


def test_tags_of_every_page_lead_to_that_page(printed):
    """The number tree of a joined file is sorted, whole, and in the right place."""
    with pikepdf.open(io.BytesIO(printed[0])) as pdf:
        tree = pikepdf.NumberTree(pdf.Root.StructTreeRoot.ParentTree)
        for page in pdf.pages:
            for tag in tree[int(page.obj.StructParents)]:
                held = tag if "/Pg" in tag else tag.P
                assert held.Pg.objgen == page.obj.objgen
        scopes = {str(one.A.Scope) for one in headers(pdf)}
    assert scopes == {"/Column", "/Row"}


def test_scope_is_enough_since_every_table_has_one_row_of_heads(printed):
    with pikepdf.open(io.BytesIO(printed[0])) as pdf:
        assert {len(one.K) for one in tagged(pdf, "/THead")} == {1}
        cells = [*tagged(pdf, "/TD"), *headers(pdf)]
        assert not any("/Headers" in one.get("/A", {}) for one in cells)
        assert not any("/ID" in one for one in cells)


def headers(pdf):
    return tagged(pdf, "/TH")


def tagged(pdf, tag):
    told = (one for one in pdf.objects if isinstance(one, pikepdf.Dictionary))
    return [one for one in told if str(one.get("/S", "")) == tag]


def test_registers_travel_inside_as_plain_tables(printed):
    data, _again, paper = printed
    with pikepdf.open(io.BytesIO(data)) as pdf:
        files = {name: pdf.attachments[name] for name in pdf.attachments}
        name = f"reed-{YEAR}-plantings.csv"
        told = files[name].get_file().read_bytes().decode("utf-8-sig")
        rows = list(csv.reader(io.StringIO(told)))
        assert len(pdf.Root.AF) == len(files)
    section = next(one for one in paper["sections"] if one.key == "plantings")
    assert rows[1:] == [list(row) for row in section.register.rows]
    assert rows[0][:2] == ["Sown", "Field"]


@pytest.mark.django_db
def test_a_part_alone_has_a_cover_and_itself(world):
    paper = packet_paper(world.farm, YEAR, today=TODAY, chosen=["training"])
    reader = pypdf.PdfReader(io.BytesIO(print_packet(paper)))
    assert len(reader.pages) == 2
    assert "Training" in reader.pages[1].extract_text()
    assert reader.metadata.title.startswith("Training, ")


@pytest.mark.django_db
def test_a_packet_in_which_nothing_changed_is_not_joined_again(world, monkeypatch):
    def printed(year=YEAR, **more):
        told = {"today": TODAY, "chosen": ["training"], **more}
        return print_packet(packet_paper(world.farm, year, **told))

    first = printed()
    joins = []
    monkeypatch.setattr(packet, "joined", lambda *_, **__: joins.append(1) or b"new")
    assert printed() == first
    assert joins == []
    assert printed(by="A. Hand") == printed(by="A. Hand") == b"new"
    assert len(joins) == 1
    TrainingFactory(farm=world.farm, trained_on=dt.date(2026, 3, 1))
    assert printed(by="A. Hand") == b"new"
    assert len(joins) == 2


@pytest.mark.django_db
def test_a_season_without_records_is_a_short_paper(world):
    printed = print_packet(packet_paper(world.farm, 1999, today=TODAY))
    texts = [
        " ".join(page.extract_text().split())
        for page in pypdf.PdfReader(io.BytesIO(printed)).pages
    ]
    assert len(texts) < 9
    assert all(len(text) > 80 for text in texts)
    for words in ("Parts without entries", "Grazing", "Incidents", "Attestation"):
        assert words in " ".join(texts)


def test_a_row_put_in_leaves_most_pieces_as_they_were():
    rows = tuple((f"2026-01-{n}", f"row {n}") for n in range(3000))
    more = (*rows[:1500], ("2026-01-x", "one more"), *rows[1500:])

    def cut(told):
        section = Section("plantings", "Plantings", Register(("Day", "What"), told))
        return [one.sections[0].register.rows for one in sheets([section])]

    before, after = cut(rows), cut(more)
    assert [row for some in after for row in some] == list(more)
    assert all(len(some) <= 240 for some in after)
    assert len(set(after) - set(before)) <= 2


def test_short_parts_share_a_piece_and_lie_as_the_part_before():
    wide = Register(tuple("abcdefghij"), (tuple("abcdefghij"),) * 5)
    parts = [Section("inputs", "Inputs", wide, weight=5), Section("compost", "Compost")]
    (sheet,) = sheets(parts)
    assert [one.is_sideways for one in sheet.sections] == [True, True]


def test_a_part_between_two_that_lie_lies_too_and_one_after_them_stands():
    wide, slim = (Register(tuple(n), (tuple(n),) * 5) for n in ("abcdefghij", "abc"))
    told = {"seed": wide, "searches": slim, "plantings": wide, "harvest": slim}
    parts = [Section(key, key, table, weight=5) for key, table in told.items()]
    (sheet,) = sheets(parts)
    assert [one.is_sideways for one in sheet.sections] == [True, True, True, False]


@pytest.mark.parametrize(
    ("system", "wide", "hot"),
    [
        (System.US, "30 ft", "131 °F – 167 °F"),
        (System.METRIC, "9.14 m", "55 °C – 75 °C"),
    ],
)
def test_widths_and_heat_are_told_in_the_farms_own_units(system, wide, hot):
    sides = (Side(1, 1, "north", "neighbour's maize", 9.144, "hedge"),)
    books = Books(spoiled(sides=sides), system)
    assert [row[3] for row in edges(books).rows] == [wide]
    assert books.heat(55.0, 75.0) == hot


@pytest.mark.django_db
def test_late_entries_of_any_noun_are_told(world):
    late = TrainingFactory(farm=world.farm, trained_on=dt.date(2026, 3, 1))
    told = late_entries(world.farm, Span(*world.farm.season(YEAR))).entries
    assert str(late) in {one.label for one in told}
    assert all((one.written_on - one.on).days > 1 for one in told)


@pytest.mark.django_db
def test_the_numbers_on_the_map_are_told_beside_it(world, owner_client):
    FieldFactory(farm=world.farm, name="South", outline=OUTLINE)
    page = owner_client.get(
        reverse("reports:packet", args=[SLUG, YEAR]), {"part": "land"}
    )
    assert "South" in {plot.name for _number, plot in page.context["on_map"]}
    assert (
        "1 " in page.content.decode().split("<figcaption")[1].split("</figcaption>")[0]
    )


@pytest.mark.django_db
def test_a_farm_with_little_in_its_books_need_not_wait_for_its_packet(world):
    assert not is_long(packet_paper(world.farm, 1999, today=TODAY))


def test_the_rate_of_a_substance_is_told_by_weight_or_by_volume():
    """Both on the acre: 4,046.8564224 m² of land, 3.785411784 L to the gallon."""
    books = Books(spoiled(), System.US)
    assert books.spread(45.359237, "mass", 4046.8564224) == "100 lb/ac"
    assert books.spread(0.3785411784, "volume", 4046.8564224 / 2) == "200 gal/ac"
    assert Books(spoiled(), System.METRIC).spread(0.1, "volume", 5000.0) == "200 L/ha"
    assert books.spread(1.0, "mass", 0.0) == ""


@pytest.mark.django_db
def test_columns_of_figures_stand_in_line_and_no_others(world):
    """A figure begins with a digit and is no day; a column is one as a whole."""
    figure, iso = re.compile(r"-?\d[\d,.]*( |%|$)"), re.compile(r"\d{4}-\d{2}-\d{2}")
    named = {"Lot", "Hours", "Source asked", "Registration"}
    paper = packet_paper(world.farm, YEAR, today=TODAY)
    seen = set()
    for section in paper["sections"]:
        first = section.groups[0] if section.groups else None
        table = section.register or (first and first.register)
        for number, head in enumerate(table.headings if table else ()):
            cells = [row[number] for row in table.rows if row[number] != "—"]
            if cells and str(head) not in named:
                all_are = all(figure.match(one) and not iso.match(one) for one in cells)
                told = number in FIGURES.get(section.key, ())
                assert told == all_are, (section.key, str(head), cells)
                seen |= {section.key} if told else set()
    assert len(seen) > 5


@pytest.mark.django_db
def test_the_lot_of_the_example_can_be_chosen(world):
    lot = world.ours["seed-lots"]
    for asked, name in ((f"seed-lots-{lot.pk}", "seed-lots"), ("x-9", "harvest-lots")):
        paper = packet_paper(world.farm, YEAR, today=TODAY, lot=asked)
        assert paper["trace"].start.noun == name
        assert f"seed-lots-{lot.pk}" in dict(paper["lots"])


def test_what_came_and_what_went_is_told_by_the_records():
    last = but(at.STAND, id=7, sown_on=day("2025-05-01"))
    other = but(last, lines=(at.rows.Line("Rye", False, None),))
    books = spoiled(stands=(at.STAND, other))
    before = Span(day("2025-01-01"), day("2025-12-31"))
    told = {one.part: one for one in changes_between(books, before, at.SEASON)}
    assert told[Part.KINDS].came == ("Buckwheat",)
    assert told[Part.KINDS].went == ("Rye",)
    assert Part.LAND not in told
    assert changes_between(books, at.SEASON, at.SEASON) == ()
