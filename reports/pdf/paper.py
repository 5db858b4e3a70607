"""A whole paper from its template, printed in one piece."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from django.template.loader import render_to_string

from reports.pdf.printing import to_pdf


def print_paper(name: str, values: Mapping[str, Any]) -> bytes:
    """Print the template of that name in the style that lies beside it."""
    html = render_to_string(f"reports/{name}.html", dict(values))
    return to_pdf(html, css=render_to_string(f"reports/{name}.css", dict(values)))
