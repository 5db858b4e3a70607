"""The stations of the season report, each run in a process of its own."""

import time
from unittest import mock

import weasyprint
from django.db import connection

from farm.models import Farm
from reports import pdf
from reports.papers import season
from tests.bench import farms
from tests.bench.stopwatch import Stopwatch, peak_mb, queries_of

STATIONS = {
    "reports.papers.season.season_ledger": "ledger",
    "reports.papers.season.season_register": "register",
    "reports.papers.season.summarize": "reckoning",
    "reports.papers.season.laid_out": "drawings",
}
YEAR = farms.TODAY.year


def make(fields, years):
    """Tables, if there are none yet, and a farm; returns how many rows it has."""
    if not connection.introspection.table_names():
        farms.make_tables()
    return farms.make_farm(f"farm-{fields}", fields=fields, years=years)


def walk(fields, *, with_pdf, laps, page):
    """The way from the tables to the paper; the page is left at a path."""
    farm = Farm.objects.get(slug=f"farm-{fields}")

    def values():
        return season.season_paper(farm, YEAR, today=farms.TODAY)

    told = {"queries": queries_of(values)}
    watch = Stopwatch()
    with watch.at(STATIONS):
        for _ in range(laps):
            paper = values()
    with mock.patch.object(pdf, "to_pdf", _kept_at(page)):
        watch.timed("page", pdf.print_paper)("season_print", paper)
    told |= {name: watch[name] for name in (*STATIONS.values(), "page")}
    told["peak"] = peak_mb()
    if with_pdf:
        _print(paper, told, watch)
    return told


def _kept_at(page):
    """A printer that only keeps what it was to print."""

    def kept(html, *, css):
        page.write_text(html, encoding="utf-8")
        page.with_suffix(".css").write_text(css, encoding="utf-8")
        return b""

    return kept


def _print(paper, told, watch):
    with watch.at({"reports.pdf.to_pdf": "pdf"}):
        printed = pdf.print_paper("season_print", paper)
    told |= {"pdf": watch["pdf"], "pdf_peak": peak_mb(), "bytes": len(printed)}


def engine_alone(page):
    """The same page through WeasyPrint as it comes."""
    html = page.read_text(encoding="utf-8")
    css = page.with_suffix(".css").read_text(encoding="utf-8")
    start = time.perf_counter()
    printed = weasyprint.HTML(string=html).render(
        stylesheets=[weasyprint.CSS(string=css)], pdf_variant="pdf/ua-1"
    )
    printed.write_pdf(pdf_variant="pdf/ua-1")
    seconds = time.perf_counter() - start
    return {"alone": seconds, "pages": len(printed.pages), "alone_peak": peak_mb()}
