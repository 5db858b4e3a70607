"""How cells are written: text, numbers, days, formulas."""

import io
import zipfile

import pytest
from hypothesis import given
from hypothesis import strategies as st

from records.nouns import NOUNS
from records.tables import tables_of
from records.tables.cells import Sort, as_text, guard, read, unguard
from tests.records.tables.papers import (
    FIELDS,
    ODD,
    PLANTINGS,
    as_csv,
    counts,
    fields_csv,
    load,
    odd_farm,
    out,
    rows_in,
    saved,
    sheets_of,
    workbook,
)


def test_the_text_is_as_rfc_4180_has_it(world):
    """Section 2: CRLF, one header, as many cells in every row, quotes doubled."""
    field = world.ours["fields"]
    field.notes = 'He said "mow",\nthen left'
    field.save()
    text = as_csv(world.farm, "fields")
    assert text.endswith("\r\n")
    assert not text.startswith("\ufeff")
    assert '"He said ""mow"",\nthen left"' in text
    assert "\r\n" in text
    header, *rows = rows_in(text)
    assert {len(row) for row in rows} == {len(header)}
    assert header[:2] == ["record_key", "name"]


def test_units_stand_in_the_header():
    headers = {
        header for noun in NOUNS for t in tables_of(noun) for header in t.headers
    }
    assert {
        "area_m2 [m2]",
        "seed_kg [kg]",
        "temp_c [°C]",
        "water_mm [mm]",
        "sown_on [yyyy-mm-dd]",
        "purity_share [of 1]",
        "wanted_kg_m2 [kg/m2]",
        "stand_per_m2 [1/m2]",
        "amount_si [kg or m3]",
    } <= headers


def test_every_noun_has_a_table_and_no_two_columns_of_one_are_called_the_same():
    names = [table.name for noun in NOUNS for table in tables_of(noun)]
    assert len(names) == len(set(names))
    for noun in NOUNS:
        for table in tables_of(noun):
            assert len(table.by_name) == len(table.columns), table.name
            assert not table.model._meta.many_to_many
            assert len(table.name) <= 31


def test_only_text_is_guarded_against_being_taken_for_a_formula(world):
    """OWASP ASVS 5.0, 1.2.10: a cell of text that begins with = + - @ gets an
    apostrophe; a temperature below zero must stay a number."""
    world.ours["fields"].name = "=North"
    world.ours["fields"].save()
    day = world.ours["compost-batches"].days.first()
    day.temp_c = -15.6
    day.save()
    assert "'=North" in as_csv(world.farm, "fields")
    assert ",-15.6," in as_csv(world.farm, "compost-batches", "days")


@pytest.mark.parametrize("text", [*ODD, "'", "''", "'=", "''=x", "'\ttab", "", "="])
def test_a_guard_is_taken_off_again_and_nothing_else_is(text):
    assert unguard(guard(text)) == text
    assert not guard(text).startswith(("=", "+", "-", "@", "\t"))


@given(st.text())
def test_whatever_is_written_is_read_as_it_was(text):
    assert unguard(guard(text)) == text


@given(st.floats(-1e12, 1e12, allow_nan=False))
def test_no_digit_of_a_number_is_lost(number):
    assert read(as_text(number), Sort.NUMBER) == number


def test_a_workbook_holds_text_as_text_numbers_as_numbers_and_days_as_days(world):
    field, planting = world.ours["fields"], world.ours["plantings"]
    field.name = "=SUM(A1)"
    field.save()
    book = sheets_of(out(world.farm, PLANTINGS, "xlsx")["plantings"][1])
    assert book.sheetnames == ["plantings", "plantings-lines"]
    header, row = list(book["plantings"].iter_rows())[:2]
    cell = {name.value: cell for name, cell in zip(header, row, strict=True)}
    assert cell["field_name"].value == "=SUM(A1)"
    assert cell["field_name"].data_type == "s"
    assert cell["field_name"].quotePrefix
    assert cell["area_m2 [m2]"].value == planting.area_m2
    assert cell["area_m2 [m2]"].data_type == "n"
    assert cell["sown_on [yyyy-mm-dd]"].value.date() == planting.sown_on
    assert cell["sown_on [yyyy-mm-dd]"].number_format == "yyyy-mm-dd"


def test_no_workbook_holds_a_formula(world):
    farm = odd_farm(world)
    for noun in NOUNS:
        ((_name, data),) = out(farm, noun, "xlsx").values()
        with zipfile.ZipFile(io.BytesIO(data)) as book:
            for part in book.namelist():
                assert b"<f>" not in book.read(part)
                assert b"<f " not in book.read(part)


def test_an_outline_too_long_for_a_cell_runs_on_and_is_read_whole(world):
    ring = [[-76.65 + n / 1e7, 42.73] for n in range(3000)]
    ring += [[-76.65, 42.74], ring[0]]
    world.ours["fields"].outline = {"type": "Polygon", "coordinates": [ring]}
    world.ours["fields"].save()
    files = out(world.farm, FIELDS, "xlsx")
    header = [cell.value for cell in sheets_of(files["fields"][1])["fields"][1]]
    assert "outline +1" in header
    assert counts(load(world.farm, FIELDS, files, by=world.owner)) == (0, 0, 1)


def test_a_table_without_keys_is_written_down_once_however_often_it_is_loaded(world):
    text = fields_csv("Upper,900,organic", "Lower,800,organic")
    assert counts(load(world.farm, FIELDS, text, by=world.owner)) == (2, 0, 0)
    assert counts(load(world.farm, FIELDS, text, by=world.manager)) == (0, 0, 2)
    book = workbook([["name", "area_m2", "status"]])
    sheet = book.active
    for row in (("Upper", "900", "organic"), ("Lower", "800", "organic")):
        sheet.append(row)
    sheet.cell(1, 2).value = "area_m2 [m2]"
    again = {"fields": ("again.xlsx", saved(book))}
    assert counts(load(world.farm, FIELDS, again, by=world.owner)) == (0, 0, 2)
    assert world.farm.fields.count() == 3
