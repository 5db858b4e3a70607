"""The printed paper: tags, bytes, and nothing fetched."""

import gc
import io
import urllib.request
from functools import lru_cache

import pypdf
import pytest
from django.template.loader import render_to_string

from reports.papers.season import laid_out
from reports.pdf import PdfUnavailableError, numbering, print_paper, printing, to_pdf
from tests.reports import samples
from tests.reports.accessible import faults_of, heading_levels, skips
from tests.reports.margins import needs_poppler, told_margins_pt, words_beyond

CSS = "@page { size: letter }"


def paper(page=None, **more):
    farm = samples.farm()
    for name, value in more.items():
        setattr(farm, name, value)
    return laid_out(
        page or samples.page(),
        samples.register(),
        farm=farm,
        year=2026,
        today=samples.TODAY,
    )


@pytest.fixture(scope="module")
def printed():
    return print_paper("season_print", paper())


def read(printed):
    return pypdf.PdfReader(io.BytesIO(printed))


@lru_cache(maxsize=2)
def sheets(printed):
    """The text of each sheet; the same paper is read once."""
    return [page.extract_text() for page in read(printed).pages]


def words(printed):
    return " ".join(" ".join(sheets(printed)).split())


def test_a_paper_is_tagged_and_names_its_language_and_title(printed):
    reader = read(printed)
    root = reader.trailer["/Root"]
    assert root["/MarkInfo"]["/Marked"] is True or root["/MarkInfo"]["/Marked"] == True  # noqa: E712
    assert "/StructTreeRoot" in root
    assert str(root["/Lang"]).startswith("en")
    assert reader.metadata.title == "Season report 2026, Alder Bank Farm"


def test_two_checkers_of_pdf_ua_1_find_no_fault_in_the_paper(printed, tmp_path):
    """ISO 14289-1, as page-validation and pdfua hold a file against it."""
    assert faults_of(printed, tmp_path) == set()
    assert skips(heading_levels(printed)) == []


def test_the_same_season_gives_the_same_bytes(printed):
    assert print_paper("season_print", paper()) == printed


def test_every_field_is_named_and_every_sheet_is_numbered(printed):
    told = words(printed)
    last = len(sheets(printed))
    for field in paper()["page"].fields:
        assert field.ledger.name in told
    assert f"page {last} of {last}" in told


def test_no_sheet_is_empty(printed):
    assert all(len(text) > 150 for text in sheets(printed))


@needs_poppler
def test_no_word_stands_beyond_the_margin(printed, tmp_path):
    css = render_to_string("reports/season_print.css", paper())
    side_pt, _foot_pt = told_margins_pt(css)
    beyond, words = words_beyond(printed, side_pt, tmp_path)
    assert words > 100
    assert beyond == []


def test_page_numbers_put_on_later_stand_by_the_margins():
    side_pt, foot_pt = told_margins_pt(
        render_to_string("reports/season_print.css", paper())
    )
    assert pytest.approx(side_pt, abs=0.1) == numbering.SIDE
    # In the middle of the foot, as the engine sets what stands beside them.
    assert pytest.approx((foot_pt - numbering.LINE) / 2, abs=0.1) == numbering.LOW


def test_the_paper_never_says_compliant(printed):
    assert "complian" not in words(printed).lower()


def test_a_figure_that_was_not_seen_in_print_says_unverified(printed):
    assert "unverified" in words(printed)


def test_bookmarks_lead_to_every_field(printed):
    names = [mark.title for mark in read(printed).outline if not isinstance(mark, list)]
    assert "North Creek" in names and "Sources" in names


def test_acres_are_printed_on_letter_and_hectares_on_a4():
    def width(units):
        css = render_to_string(
            "reports/season_print.css", paper(units=units) | {"parts": ()}
        )
        sheet = read(to_pdf("<p>x</p>", css=css)).pages[0]
        return round(float(sheet.mediabox.width))

    assert (width("us"), width("metric")) == (612, 595)


@pytest.fixture
def asked(monkeypatch):
    """Every file or address that anything tries to open through urllib."""
    opened = []

    def refuse(self, request, *args, **options):
        opened.append(getattr(request, "full_url", request))
        raise AssertionError("something was fetched")

    monkeypatch.setattr(urllib.request.OpenerDirector, "open", refuse)
    return opened


@pytest.mark.parametrize(
    "hostile",
    [
        '<img src="file:///etc/passwd">',
        '<img src="http://127.0.0.1:9/x.png">',
        '<link rel="stylesheet" href="file:///etc/hostname">',
        '<link rel="attachment" href="file:///etc/passwd">',
        "<style>@import url(http://127.0.0.1:9/x.css);</style>",
        "<p style=\"background: url('file:///etc/passwd')\">x</p>",
        '<svg><image href="file:///etc/passwd" width="9" height="9"/></svg>',
        '<svg><use href="http://127.0.0.1:9/x.svg#a"/></svg>',
        '<object data="file:///etc/passwd"></object>',
        "<style>@font-face{font-family:x;src:url(file:///etc/passwd)}p{font-family:x}"
        "</style><p>x</p>",
    ],
)
def test_hostile_markup_reaches_neither_disk_nor_network(hostile, asked):
    printed = to_pdf(f"<html lang=en><title>x</title>{hostile}<p>kept</p>", css=CSS)
    assert asked == []
    assert "kept" in words(printed)
    assert "/EmbeddedFiles" not in str(read(printed).trailer["/Root"])


def test_a_style_sheet_cannot_fetch_either(asked):
    css = CSS + "body { background: url(file:///etc/passwd) }"
    assert to_pdf("<html lang=en><title>x</title><p>kept</p>", css=css)
    assert asked == []


def test_markup_typed_as_a_reason_is_printed_as_typed(asked):
    field = samples.field(1, '<img src="file:///etc/passwd"> & Sons')
    printed = print_paper("season_print", paper(samples.page(field)))
    assert asked == []
    assert '<img src="file:///etc/passwd"> & Sons' in words(printed)


def test_a_missing_library_is_told_with_the_command_that_adds_it(monkeypatch):
    def missing(name):
        raise OSError("cannot load library 'libpango-1.0-0'")

    monkeypatch.setattr(printing.importlib, "import_module", missing)
    with pytest.raises(PdfUnavailableError) as caught:
        to_pdf("<p>x</p>", css=CSS)
    assert "libpango-1.0-0" in caught.value.remedy


def test_the_collector_is_back_at_work_after_printing():
    to_pdf("<html lang=en><title>x</title><p>x</p>", css=CSS)
    assert gc.isenabled()
