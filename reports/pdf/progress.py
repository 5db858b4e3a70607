"""How far the engine is with one long paper, page by page."""

from __future__ import annotations

import logging
import re
from collections.abc import Callable, Iterator
from contextlib import contextmanager

ENGINE = "weasyprint.progress"
PAGE = re.compile(r"Page (\d+)$")


class _Listener(logging.Handler):
    """Passes on the number of each page that is laid out; what it raises, stops."""

    def __init__(self, heard: Callable[[int], None]) -> None:
        super().__init__()
        self.heard = heard

    def emit(self, record: logging.LogRecord) -> None:
        page = PAGE.search(record.getMessage())
        if page:
            self.heard(int(page[1]))


@contextmanager
def each_page(heard: Callable[[int], None]) -> Iterator[None]:
    """Tell of every page while a paper is laid out."""
    told, listener = logging.getLogger(ENGINE), _Listener(heard)
    level, passes_on = told.level, told.propagate
    told.addHandler(listener)
    told.setLevel(logging.INFO)
    told.propagate = False
    try:
        yield
    finally:
        told.removeHandler(listener)
        told.setLevel(level)
        told.propagate = passes_on
