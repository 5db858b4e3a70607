"""Rows of a long register, spelled by hand: it may have forty thousand cells.

A template for each cell takes longer than all the reckoning behind it.
"""

from __future__ import annotations

from collections.abc import Mapping
from html import escape

from django import template
from django.utils.safestring import SafeString

from reports.papers.packet.tables import Register

register = template.Library()


# The columns of each register that hold figures, which stand in line at the right.
FIGURES: Mapping[str, frozenset[int]] = {
    "land": frozenset({1, 6}),
    "edges": frozenset({3}),
    "seed": frozenset({7, 8, 10, 11, 12}),
    "plantings": frozenset({2, 5, 6}),
    "endings": frozenset({7}),
    "films": frozenset({3}),
    "inputs": frozenset({5, 6, 11}),
    "compost": frozenset({3, 4, 5, 6}),
    "pests": frozenset({4, 5, 11, 12}),
    "substances": frozenset({4, 5, 6}),
    "grazing": frozenset({6}),
    "harvest": frozenset({4}),
    "apart": frozenset({4}),
}


@register.simple_tag
def heads_of(table: Register, name: str = "") -> SafeString:
    """What heads the table's columns."""
    heads = (
        f'<th scope="col"{_class(name, number)}>{escape(str(one))}</th>'
        for number, one in enumerate(table.headings)
    )
    return SafeString("".join(heads))


@register.simple_tag
def rows_of(table: Register, printing: object = False, name: str = "") -> SafeString:
    """The table's rows; on a page each cell says what heads it, for narrow screens."""
    labels = [
        _class(name, number) + ("" if printing else f' data-label="{escape(str(one))}"')
        for number, one in enumerate(table.headings)
    ]
    return SafeString("".join(_row(row, labels[1:]) for row in table.rows))


def _class(name: str, number: int) -> str:
    return ' class="figures"' if number in FIGURES.get(name, ()) else ""


def _row(row: tuple[str, ...], labels: list[str]) -> str:
    first, *others = map(escape, row)
    told = zip(labels, others, strict=True)
    cells = "".join(f"<td{label}>{cell}</td>" for label, cell in told)
    return f'<tr><th scope="row">{first}</th>{cells}</tr>'
