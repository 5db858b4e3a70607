"""The season report as one file."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from reports.pdf import print_paper
from reports.pdf.kept import Heard, unheard
from reports.pdf.progress import each_page

# Fields and plantings that can be printed while one waits for the page.
LONG = 40


def is_long(paper: Mapping[str, Any]) -> bool:
    """Whether printing takes longer than one waits for a page."""
    fields = paper["page"].fields
    return len(fields) + sum(len(one.plantings) for one in fields) > LONG


def print_season(paper: Mapping[str, Any], *, heard: Heard = unheard) -> bytes:
    """Print a season report; how many pages there will be is not known before."""
    with each_page(lambda page: heard(page, 0)):
        return print_paper("season_print", paper)
