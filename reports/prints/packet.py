"""The packet as one file: its parts printed apart, joined, and what it encloses."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from django.template.loader import render_to_string
from django.utils.translation import gettext as _

from reports.papers.packet.enclosures import enclosures
from reports.papers.packet.sheets import Sheet, sheets
from reports.papers.packet.tables import Section
from reports.papers.packet.told import printed_sections
from reports.pdf.joining import joined
from reports.pdf.kept import Heard, pieces_of, unheard, whole_of
from reports.pdf.numbering import Numbering
from reports.pdf.pieces import Leaf, Piece, fingerprint
from reports.pdf.presses import Presses

# Rows that can be printed while one waits for the page.
LONG = 500


@dataclass(frozen=True)
class Entry:
    """One line of the contents."""

    section: Section
    page: int


def is_long(paper: Mapping[str, Any]) -> bool:
    """Whether printing takes longer than one waits for a page."""
    return bool(sum(one.weight for one in paper["sections"]) > LONG)


def leaves_of(paper: Mapping[str, Any]) -> tuple[list[Sheet], list[Leaf]]:
    """The parts of a packet as they are printed, without cover and contents."""
    told = list(sheets(printed_sections(paper["sections"])))
    css = render_to_string("reports/packet_print.css", dict(paper))
    leaves = [
        Leaf(
            render_to_string(
                "reports/packet_sheet_print.html",
                {**paper, "sections": sheet.sections, "printing": True},
            ),
            css,
        )
        for sheet in told
    ]
    return told, leaves


def print_packet(
    paper: Mapping[str, Any], *, presses: Presses | None = None, heard: Heard = unheard
) -> bytes:
    """Print a packet. The same values give the same bytes, however they come about."""
    told, leaves = leaves_of(paper)
    named = f"{_('Papers for certification')} {paper['year']}"
    numbering = Numbering(_("page "), _(" of "), named)
    inside = tuple(enclosures(paper))

    def join() -> bytes:
        pieces = pieces_of(leaves, presses=presses, heard=heard)
        front = _front(paper, told, pieces, css=leaves[0].css)
        return joined([front, *pieces], numbering=numbering, enclosures=inside)

    key = fingerprint(
        _cover(paper, [Entry(one, 0) for sheet in told for one in sheet.sections]),
        *(leaf.key for leaf in leaves),
        *(part for one in inside for part in (one.name, one.says, one.data)),
        *(numbering.page, numbering.of, numbering.paper),
    )
    data = whole_of(f"whole-{paper['farm'].pk}-{paper['year']}", key, join)
    heard(len(leaves), len(leaves))
    return data


def _front(
    paper: Mapping[str, Any], told: Sequence[Sheet], pieces: Sequence[Piece], css: str
) -> Piece:
    """Cover and contents; set again where they take more pages than was thought."""
    pages = 0
    for _attempt in range(3):
        entries = list(_entries(told, pieces, first=pages))
        (front,) = pieces_of([Leaf(_cover(paper, entries), css)])
        if front.pages == pages:
            break
        pages = front.pages
    return front


def _cover(paper: Mapping[str, Any], entries: Sequence[Entry]) -> str:
    told = {**paper, "entries": entries}
    return render_to_string("reports/packet_print.html", told)


def _entries(
    told: Sequence[Sheet], pieces: Sequence[Piece], *, first: int
) -> Iterator[Entry]:
    """Each part once, with the page it begins on."""
    for sheet, printed in zip(told, pieces, strict=True):
        heads = [mark for mark in printed.marks if mark.level == 0]
        for section, mark in zip(sheet.sections, heads, strict=True):
            if not section.continued:
                yield Entry(section, first + mark.page + 1)
        first += printed.pages
