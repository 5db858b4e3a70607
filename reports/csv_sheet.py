"""Rows as comma-separated text that no spreadsheet takes for a formula."""

from __future__ import annotations

import csv
import io
import re
from collections.abc import Iterable, Sequence

from django.http import HttpResponse

RISKY = re.compile(r"'*[=+\-@\t\r]")
Cell = str | int | float | None


def csv_answer(
    name: str, header: Sequence[str], rows: Iterable[Sequence[Cell]]
) -> HttpResponse:
    """A file for a spreadsheet; numbers stay numbers."""
    told = {"Content-Disposition": f'attachment; filename="{name}.csv"'}
    data = csv_bytes(header, rows)
    return HttpResponse(data, "text/csv; charset=utf-8", headers=told)


def csv_bytes(header: Sequence[str], rows: Iterable[Sequence[Cell]]) -> bytes:
    """The file itself."""
    text = io.StringIO()
    writer = csv.writer(text)
    writer.writerow(header)
    writer.writerows([_safe(cell) for cell in row] for row in rows)
    return ("\N{BYTE ORDER MARK}" + text.getvalue()).encode()


def _safe(cell: Cell) -> Cell:
    if isinstance(cell, str) and RISKY.match(cell):
        return f"'{cell}"
    return "" if cell is None else cell
