"""How long the season report takes, beside the printing engine alone.

Seconds are those of the processor; the ratios hold on other machines too.
Run ``python -m tests.bench.season``; ``--help`` tells of its options.
"""

import argparse
import multiprocessing
import tempfile
from concurrent.futures import ProcessPoolExecutor
from pathlib import Path

from tests.bench import stations

REST = ("ledger", "register", "reckoning", "layout", "page")
MOST_REST = 0.15
MOST_RECKONING_S, AT_FIELDS = 0.5, 1000


def main():
    asked = _asked()
    with tempfile.TemporaryDirectory() as folder:
        runs = [_run(fields, asked, Path(folder)) for fields in asked.fields]
    _growth(runs)
    _aims(runs)


def _asked():
    parser = argparse.ArgumentParser(prog="python -m tests.bench.season")
    parser.add_argument(
        "--fields",
        type=int,
        nargs="+",
        default=[10, 100, 1000],
        help="farms to build, by their fields",
    )
    parser.add_argument("--years", type=int, default=10, help="years of records")
    parser.add_argument("--laps", type=int, default=3, help="the middle one counts")
    parser.add_argument("--no-pdf", action="store_true", help="leave out the paper")
    parser.add_argument(
        "--pdf-up-to",
        type=int,
        default=100,
        metavar="FIELDS",
        help="print no paper of larger farms: 1,000 fields take many minutes",
    )
    return parser.parse_args()


def _run(fields, asked, folder):
    page = folder / f"{fields}.html"
    with_pdf = not asked.no_pdf and fields <= asked.pdf_up_to
    records = apart(stations.make, fields, asked.years)
    told = {"fields": fields, "records": records}
    told |= apart(stations.walk, fields, with_pdf=with_pdf, laps=asked.laps, page=page)
    if with_pdf:
        told |= apart(stations.engine_alone, page)
    _tell(told, asked.years)
    return told


def apart(work, *args, **more):
    """The answer of some work done in a fresh process, so that memory starts anew."""
    fresh = multiprocessing.get_context("spawn")
    with ProcessPoolExecutor(1, mp_context=fresh) as pool:
        return pool.submit(work, *args, **more).result()


def rest(told):
    """Seconds of everything but the printing."""
    return sum(told[name] for name in REST)


def _tell(told, years):
    fields = told["fields"]
    print(f"\n{fields:,} fields, {years} years, {told['records']:,} records")
    print(f"  plantings in the season {told['plantings']:14,}")
    print(f"  queries of the paper {told['queries']:17}")
    for name in REST:
        each = f"{1000 * told[name] / fields:8.2f} ms a field"
        print(f"  {name:24}{told[name]:10.3f} s {each}")
    print(f"  {'most memory':24}{told['peak']:10.0f} MB")
    if "pdf" not in told:
        return
    whole = rest(told) + told["pdf"]
    print(f"  {'printing':24}{told['pdf']:10.3f} s {told['pages']:8} pages")
    print(f"  {'engine alone':24}{told['alone']:10.3f} s, same page")
    print(f"  {'most memory, printing':24}{told['pdf_peak']:10.0f} MB")
    print(f"  {'most memory, alone':24}{told['alone_peak']:10.0f} MB")
    for name in (*REST, "pdf"):
        print(f"  {name} / engine alone {told[name] / told['alone']:21.4f}")
    print(f"  whole / engine alone {whole / told['alone']:21.4f}")


def _growth(runs):
    """How much longer each station takes for how many more fields."""
    for less, more in zip(runs, runs[1:], strict=False):
        print(f"\nfrom {less['fields']:,} to {more['fields']:,} fields")
        print(f"  {'fields':10}{more['fields'] / less['fields']:7.1f} times")
        for name in ("queries", *REST, "peak", "pdf", "alone"):
            if name in less and name in more:
                print(f"  {name:10}{more[name] / less[name]:7.1f} times")


def _aims(runs):
    print("\naims")
    for told in runs:
        if "pdf" in told:
            share = rest(told) / (rest(told) + told["pdf"])
            _aim(f"all but printing, {told['fields']:,} fields", share, MOST_REST)
        if told["fields"] == AT_FIELDS:
            seconds = told["ledger"] + told["reckoning"]
            _aim(
                f"ledger and reckoning, {AT_FIELDS:,} fields", seconds, MOST_RECKONING_S
            )


def _aim(name, found, most):
    verdict = "met" if found <= most else "MISSED"
    print(f"  {name:40}{found:7.3f}, at most {most}: {verdict}")


if __name__ == "__main__":
    main()
