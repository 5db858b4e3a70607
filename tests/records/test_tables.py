"""Every noun as a table: out, in again, twice, and with everything that can be wrong.

The text follows RFC 4180, https://www.rfc-editor.org/rfc/rfc4180, section 2; what is
guarded against being taken for a formula follows OWASP ASVS 5.0, 1.2.10.
"""

import csv
import datetime as dt
import graphlib
import io
import itertools

import pytest
from django.db import models, transaction

from records.nouns import BY_MODEL, BY_SLUG, NOUNS
from records.tables import tables_of, texts, trial, workbooks
from records.tables.columns import AUTHORSHIP
from records.tables.layout import rows_of
from tests.factories import FarmFactory, KindFactory, MembershipFactory
from tests.world import make_world

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
NOT_FREE = {"void_reason", "key", "noxious"}
DIGITS = (-15.6, 0.1 + 0.2, 1 / 3, 1e-7, 123456789.123456)


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


def without_authors(files):
    """The tables as lists of rows, but for who wrote them and when."""
    told = {}
    for name, (_file, data) in files.items():
        rows = list(csv.DictReader(io.StringIO(data.decode(), newline="")))
        told[name] = [
            {key: row[key] for key in row if key not in AUTHORSHIP} for row in rows
        ]
    return told


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


def bare_farm(people, kinds):
    """A farm with its people and its kinds, and not one record."""
    farm = FarmFactory(name="Alder Hill", slug="alder-hill")
    for email, role in people:
        MembershipFactory(farm=farm, user__email=email, role=role)
    for slug, name in kinds:
        KindFactory(farm=farm, slug=slug, name=name)
    return farm, farm.memberships.get(role="owner").user


def nouns_in_order():
    """Those first that others name in any of their tables."""
    named = {
        noun.slug: {
            BY_MODEL[column.to._meta.model_name].slug
            for table in tables_of(noun)
            for column in table.columns
            if column.to and column.to._meta.model_name in BY_MODEL
        }
        - {noun.slug}
        for noun in NOUNS
    }
    return [BY_SLUG[slug] for slug in graphlib.TopologicalSorter(named).static_order()]


@pytest.mark.django_db
@pytest.mark.parametrize("how", ["csv", "xlsx"])
def test_every_noun_goes_out_and_comes_in_again_without_loss(how):
    with transaction.atomic():
        world = make_world()
        farm = odd_farm(world)
        people = list(farm.memberships.values_list("user__email", "role"))
        kinds = list(farm.kinds.values_list("slug", "name"))
        files = {noun.slug: out(farm, noun, how) for noun in NOUNS}
        told = {noun.slug: without_authors(out(farm, noun)) for noun in NOUNS}
        transaction.set_rollback(True)
    farm, owner = bare_farm(people, kinds)
    bad = []
    for noun in nouns_in_order():
        tried = load(farm, noun, files[noun.slug], by=owner)
        bad += faults(tried)
    assert bad == []
    for noun in NOUNS:
        assert without_authors(out(farm, noun)) == told[noun.slug]
    for noun in NOUNS:
        again = load(farm, noun, files[noun.slug], by=owner)
        assert counts(again) == (0, 0, len(again.sheet.rows))
