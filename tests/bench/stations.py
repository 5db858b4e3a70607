"""The stations of the season report, each run in a process of its own."""

from unittest import mock

import weasyprint
from django.db import connection

from farm.models import Farm
from reports.calc.season import summarize
from reports.ledger import season_ledger, season_register
from reports.papers.season import season_paper
from reports.pdf import paper as pdf
from tests.bench import farms
from tests.bench.stopwatch import Stopwatch, peak_mb, processor_s, queries_of

STATIONS = {
    season_ledger: "ledger",
    season_register: "register",
    summarize: "reckoning",
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
        return season_paper(farm, YEAR, today=farms.TODAY)

    told = {"queries": queries_of(values)}
    watch = Stopwatch()
    with watch.at(STATIONS):
        for _ in range(laps):
            paper = watch.timed("values", values)()
    with mock.patch.object(pdf, "to_pdf", _kept_at(page)):
        watch.timed("page", pdf.print_paper)("season_print", paper)
    told |= {name: watch[name] for name in (*STATIONS.values(), "values", "page")}
    told["plantings"] = sum(len(one.plantings) for one in paper["page"].fields)
    told["layout"] = told["values"] - sum(told[name] for name in STATIONS.values())
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
    with watch.at({pdf.to_pdf: "pdf"}):
        printed = pdf.print_paper("season_print", paper)
    told |= {"pdf": watch["pdf"], "pdf_peak": peak_mb(), "bytes": len(printed)}


def engine_alone(page):
    """The same page through WeasyPrint as it comes."""
    html = page.read_text(encoding="utf-8")
    css = page.with_suffix(".css").read_text(encoding="utf-8")
    start = processor_s()
    printed = weasyprint.HTML(string=html).render(
        stylesheets=[weasyprint.CSS(string=css)], pdf_variant="pdf/ua-1"
    )
    printed.write_pdf(pdf_variant="pdf/ua-1")
    seconds = processor_s() - start
    return {"alone": seconds, "pages": len(printed.pages), "alone_peak": peak_mb()}
