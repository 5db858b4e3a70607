"""The registers of a packet as plain files that travel inside it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from django.utils.translation import gettext as _

from reports.csv_sheet import csv_bytes
from reports.papers.packet.tables import Section
from reports.pdf.pieces import Enclosure


def enclosures(paper: Mapping[str, Any]) -> Iterator[Enclosure]:
    """One file for each register that has a row, in the order of the parts."""
    for section in paper["sections"]:
        table = _table(section)
        if table:
            heading, rows = table
            yield Enclosure(
                name=f"{paper['farm'].slug}-{paper['year']}-{section.key}.csv",
                says=section.title,
                type="text/csv",
                data=csv_bytes(heading, rows),
            )


def _table(section: Section) -> tuple[list[str], list[tuple[str, ...]]] | None:
    if section.register is not None and section.register.rows:
        return [str(one) for one in section.register.headings], [*section.register.rows]
    if not section.groups:
        return None
    heading = [_("Field"), *map(str, section.groups[0].register.headings)]
    rows = [(one.title, *row) for one in section.groups for row in one.register.rows]
    return (heading, rows) if rows else None
