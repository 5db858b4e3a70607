"""How a noun of the story is read: which word fills which column."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from django.db.models import Model

from farm.models import Record
from records.reading.demo.book import Book
from records.reading.demo.plain import Told

Column = Callable[[Any, Book], Mapping[str, Any]]
Parts = dict[str, Sequence[Model]]

# Words that no column keeps: who and when, what hangs below, what is told twice.
ASIDE = {"on", "by", "written", "mended", "voided", "reviewed", "done_by", "told"}
# What a check should find in a row that is faulty on purpose.
ASIDE |= {"fault"}
BELOW = {"seed", "seen", "weighed", "ended", "frames", "prices", "mix"}


@dataclass(frozen=True)
class Sheet:
    model: type[Record]
    columns: Mapping[str, Column]
    # The word that tells the day it happened.
    day: str = "on"
    finish: Callable[[Any, Told, Book], Parts] = lambda row, told, book: {}


def put(name: str, read: Callable[[Any], Any] = lambda value: value) -> Column:
    return lambda value, book: {name: read(value)}


def spread(read: Callable[[Any], Mapping[str, Any]]) -> Column:
    return lambda value, book: read(value)


def find(name: str, shelf: str) -> Column:
    return lambda value, book: {name: getattr(book, shelf)[value]}


def same(*names: str) -> dict[str, Column]:
    return {name: put(name) for name in names}


def fill(row: Record, told: Told, sheet: Sheet, book: Book) -> Parts:
    """Lay what is told into a row; the parts that belong to it come back."""
    for word, value in told.items():
        if word not in sheet.columns and word in ASIDE | BELOW:
            continue
        for name, kept in sheet.columns[word](value, book).items():
            setattr(row, name, kept)
    return sheet.finish(row, told, book)
