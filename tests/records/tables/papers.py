"""Tables going out and coming in."""

import csv
import datetime as dt
import io
import itertools

from django.db import models
from openpyxl import Workbook, load_workbook

from records.nouns import BY_SLUG, NOUNS
from records.tables import tables_of, texts, trial, workbooks
from records.tables.layout import rows_of

NOW = dt.datetime(2026, 11, 25, 9, 30, tzinfo=dt.UTC)


ODD = (
    "=North",
    "+1 555 0100",
    "-half a bed",
    "@home",
    "'=guarded already",
    "''two marks",
    "'tis the wet end",
    "\ttabbed",
    "007",
    "1e5",
    "2026-03-04",
    "TRUE",
    'He said "mow", then; left',
    "a, b; c\td",
    "קצה השדה",
    "🌾🐝",
    "_x000D_ as typed",
    " spaces about ",
    "＝wide",
)


ODD_LONG = ("two\nlines", "three\r\nlines\r\n", "bell\x07", "x" * 3990)


# Words that a form holds to a pattern of its own.
NOT_FREE = {"void_reason", "key"}


def out(farm, noun, how="csv"):
    """Every table of a noun as files, by name."""
    records = noun.model._default_manager.filter(farm=farm).order_by("pk")
    sheets = [(table, table.tell(rows_of(table, records))) for table in tables_of(noun)]
    if how == "xlsx":
        data = workbooks.write(sheets)
        return {noun.slug: (f"{noun.slug}.xlsx", data)}
    return {
        table.name: (f"{table.name}.csv", "".join(texts.lines(table, rows)).encode())
        for table, rows in sheets
    }


def load(farm, noun, files, *, by, keep=True):
    if isinstance(files, str):
        files = {noun.slug: ("typed.csv", files.encode())}
    return trial.try_out(noun, files, farm=farm, by=by, now=NOW, keep=keep)


def counts(tried):
    assert tried.outcome.faults == []
    return tuple(tried.counts.values())


def faults(tried):
    return [(f.table, f.row, f.column, f.sentence) for f in tried.outcome.faults]


def make_odd(row, strings):
    """Fill every free text of a row with something hard to carry."""
    for field in row._meta.concrete_fields:
        is_free = isinstance(field, models.CharField | models.TextField)
        if not is_free or field.choices or field.name in NOT_FREE:
            continue
        text = next(strings)
        if isinstance(field, models.TextField):
            text = f"{text}{next(LONG)}"
        setattr(row, field.name, text[: field.max_length])
    row.save()


LONG = itertools.cycle(ODD_LONG)


def odd_farm(world):
    """Our farm, with odd words and figures in every record and part."""
    strings = itertools.cycle(ODD)
    for noun in NOUNS:
        for table in tables_of(noun):
            records = noun.model._default_manager.filter(farm=world.farm)
            for row in rows_of(table, records):
                make_odd(row, strings)
    return world.farm


def rows_in(text):
    return list(csv.reader(io.StringIO(text, newline="")))


def fields_csv(*rows, header="name,area_m2 [m2],status"):
    return "\r\n".join([header, *rows]) + "\r\n"


def as_csv(farm, noun, related=""):
    name = noun if not related else f"{noun}-{related}"
    return out(farm, BY_SLUG[noun])[name][1].decode()


FIELDS, PLANTINGS, LOTS = (
    BY_SLUG[slug] for slug in ("fields", "plantings", "seed-lots")
)


def sheets_of(data):
    return load_workbook(io.BytesIO(data))


def workbook(rows, title="fields"):
    book = Workbook()
    book.active.title = title
    for row in rows:
        book.active.append(row)
    return book


def saved(book):
    data = io.BytesIO()
    book.save(data)
    return data.getvalue()


def plantings_csv(*rows):
    header = "record_key,field_name,sown_on,area_m2,method"
    return "\r\n".join([header, *rows]) + "\r\n"


def lines_csv(*rows):
    return "\r\n".join(["planting,kind_name,seed_kg,share", *rows]) + "\r\n"
