"""How long the papers for certification take: new, after one change, unchanged.

Beside them the printing engine alone, with all parts in one piece, and a browser's
own print of the same page, where there is a browser. Aims are held against the clock,
for two processes print at once; seconds of the processor, which a busy machine
stretches less, stand beside. Of the engine alone it is told what its processor seconds
would be, shared by the processes. Of a browser only the clock can be believed, for
some of its processes are nobody's children in the end.
Run ``python -m tests.bench.packet``; ``--help`` tells of its options.
"""

import argparse
import datetime as dt
import io
import shutil
import subprocess
import sys
import tempfile
import time
import uuid
from pathlib import Path

import pikepdf
import weasyprint
from django.core.checks import run_checks

import manage
from farm.models import Farm, Field
from records.models import Application
from reports.papers.packet import packet_paper
from reports.pdf.presses import Presses
from reports.prints import packet
from tests.bench import farms
from tests.bench.stopwatch import family_s

YEAR, VARIANT = farms.TODAY.year, "pdf/ua-1"
MOST_NEW_S, MOST_CHANGED_S = 20.0, 2.0
BROWSERS = ("chromium", "chromium-browser", "google-chrome")
FLAGS = ("--headless", "--no-sandbox", "--disable-gpu", "--no-pdf-header-footer")


def main():
    asked = _asked()
    # Processes that print take up what their parent was started by: the worker is
    # started by a few lines, not by all that is taken up here.
    sys.modules["__main__"] = manage
    # Every command does so before it begins; it reads all addresses of the site.
    run_checks()
    farms.make_tables()
    farms.make_farm("farm", fields=asked.fields, years=asked.years)
    farm = Farm.objects.get(slug="farm")
    new = _print("new", farm, asked.processes)
    write_one_more(farm)
    changed = _print("one record more", farm, asked.processes)
    _print("unchanged", farm, asked.processes)
    _aim("new", new, MOST_NEW_S)
    _aim("one record more", changed, MOST_CHANGED_S)
    if not asked.alone:
        _others(*one_page(farm), asked.processes)


class Watch:
    """Seconds of the clock and of the processor since it was made."""

    def __init__(self):
        self._clock, self._processor = time.perf_counter(), family_s()

    @property
    def clock_s(self):
        return time.perf_counter() - self._clock

    @property
    def worked_s(self):
        return family_s() - self._processor


def _asked():
    parser = argparse.ArgumentParser(prog="python -m tests.bench.packet")
    parser.add_argument("--fields", type=int, default=200)
    parser.add_argument("--years", type=int, default=4, help="years of records")
    parser.add_argument("--processes", type=int, default=2, help="that print at once")
    parser.add_argument("--alone", action="store_true", help="time no other printer")
    return parser.parse_args()


def _print(what, farm, processes):
    """Print a packet as the worker does; returns the seconds it took."""
    watch = Watch()
    with Presses(processes) as presses:
        paper = packet_paper(farm, YEAR, today=farms.TODAY)
        reckoned = watch.clock_s
        data = packet.print_packet(paper, presses=presses)
    seconds = _tell(what, watch, data)
    rows = sum(one.weight for one in paper["sections"])
    each = rows / Field.objects.filter(farm=farm).count()
    print(f"    {reckoned:.2f} s of it reckoning; {each:.0f} rows a field")
    return seconds


def write_one_more(farm):
    """Compost on one field, late in the season."""
    last = Application.objects.filter(farm=farm).latest("pk")
    on = dt.date(YEAR, 10, 3)
    last.pk, last.client_key = None, uuid.uuid4()
    last.applied_on = last.worked_in_on = on
    farms.create([last])


def one_page(farm):
    """The same parts as a page of their own, and its style."""
    paper = packet_paper(farm, YEAR, today=farms.TODAY)
    told = {**paper, "printing": True}
    css = packet.render_to_string("reports/packet_print.css", told)
    return packet.render_to_string("reports/packet_sheet_print.html", told), css


def _others(html, css, processes):
    watch = Watch()
    data = engine_alone(html, css)
    least = watch.worked_s / processes
    _tell("the engine alone, in one piece", watch, data)
    print(
        f"    shared by {processes} processes: {least:.1f} s, without any work of ours"
    )
    browser = next(filter(None, map(shutil.which, BROWSERS)), None)
    if browser is None:
        print("no browser here to print the same page")
        return
    watch = Watch()
    data = by_browser(browser, html, css)
    _tell("a browser's own print", watch, data)


def engine_alone(html, css):
    style = weasyprint.CSS(string=css)
    page = weasyprint.HTML(string=html)
    return page.write_pdf(stylesheets=[style], pdf_variant=VARIANT)


def by_browser(browser, html, css):
    with tempfile.TemporaryDirectory() as folder:
        page, printed = Path(folder, "page.html"), Path(folder, "page.pdf")
        styled = html.replace("</head>", f"<style>{css}</style></head>")
        page.write_text(styled, encoding="utf-8")
        line = [browser, *FLAGS, f"--user-data-dir={folder}/browser"]
        line += [f"--print-to-pdf={printed}", page.as_uri()]
        subprocess.run(line, check=True, capture_output=True, timeout=600)
        return printed.read_bytes()


def _tell(what, watch, data):
    """Print a line of the table; returns the seconds of the clock."""
    seconds, worked = watch.clock_s, watch.worked_s
    with pikepdf.open(io.BytesIO(data)) as pdf:
        pages = len(pdf.pages)
    times = f"{seconds:8.2f} s {worked:8.2f} s of processor"
    each = f"{1000 * worked / pages:5.0f} ms a page"
    print(f"{what:32}{times} {pages:5} pages {len(data) / 1e6:6.2f} MB {each}")
    return seconds


def _aim(what, seconds, most):
    verdict = "met" if seconds <= most else "MISSED"
    print(f"  aim, {what}: {seconds:.1f} s, at most {most:.0f} s: {verdict}")


if __name__ == "__main__":
    main()
