"""Rows of a long register, spelled by hand: it may have forty thousand cells.

A template for each cell takes longer than all the reckoning behind it.
"""

from __future__ import annotations

from html import escape

from django import template
from django.utils.safestring import SafeString

from reports.papers.packet.tables import Register

register = template.Library()


@register.simple_tag
def rows_of(table: Register, printing: object = False) -> SafeString:
    """The table's rows; on a page each cell says what heads it, for narrow screens."""
    labels = [
        "" if printing else f' data-label="{escape(str(one))}"'
        for one in table.headings
    ]
    return SafeString("".join(_row(row, labels[1:]) for row in table.rows))


def _row(row: tuple[str, ...], labels: list[str]) -> str:
    first, *others = map(escape, row)
    told = zip(labels, others, strict=True)
    cells = "".join(f"<td{label}>{cell}</td>" for label, cell in told)
    return f'<tr><th scope="row">{first}</th>{cells}</tr>'
