"""Every noun as a table: out, in again, twice, and with everything that can be wrong.

The text follows RFC 4180, https://www.rfc-editor.org/rfc/rfc4180, section 2; what is
guarded against being taken for a formula follows OWASP ASVS 5.0, 1.2.10.
"""

import csv
import datetime as dt
import graphlib
import io
import itertools
import re
import zipfile

import pytest
from django.core.exceptions import ValidationError
from django.core.files.uploadedfile import SimpleUploadedFile
from django.db import connection, models, transaction
from django.test.utils import CaptureQueriesContext
from django.urls import reverse
from django.utils.html import escape
from hypothesis import given
from hypothesis import strategies as st
from openpyxl import Workbook, load_workbook

from farm.models import Change, Field
from farm.writing import void
from records.models import Planting, SeedLot
from records.nouns import BY_MODEL, BY_SLUG, NOUNS
from records.tables import tables_of, texts, trial, workbooks
from records.tables.cells import Sort, as_text, guard, read, unguard
from records.tables.columns import AUTHORSHIP
from records.tables.layout import rows_of
from tests.factories import (
    FarmFactory,
    FieldFactory,
    KindFactory,
    MembershipFactory,
    PlantingFactory,
    SeedLotFactory,
)
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


def sheets_of(data):
    return load_workbook(io.BytesIO(data))


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


def test_a_new_record_is_written_by_whoever_loads_it_and_so_are_its_changes(world):
    load(world.farm, FIELDS, fields_csv("Upper,900,organic"), by=world.manager)
    field = world.farm.fields.get(name="Upper")
    assert (field.written_by, field.written_at) == (world.manager, NOW)
    text = as_csv(world.farm, "fields").replace("900", "950")
    assert counts(load(world.farm, FIELDS, text, by=world.owner)) == (0, 1, 1)
    field.refresh_from_db()
    assert (field.area_m2, field.written_by) == (950, world.manager)
    wrote, changed = Change.objects.filter(object_id=field.pk, noun="field")
    assert (wrote.verb, wrote.by) == ("wrote", world.manager)
    assert (changed.verb, changed.by) == ("changed", world.owner)
    assert changed.before == {"area_m2": "900.0"}
    assert changed.after == {"area_m2": "950.0"}


def test_columns_left_out_are_left_as_they_are(world):
    field = world.ours["fields"]
    field.notes = "Stony at the gate."
    field.save()
    text = f"record_key,status\r\n{field.client_key},buffer\r\n"
    assert counts(load(world.farm, FIELDS, text, by=world.owner)) == (0, 1, 0)
    field.refresh_from_db()
    assert (field.status, field.notes) == ("buffer", "Stony at the gate.")


def test_seeing_a_table_first_saves_nothing(world):
    text = fields_csv("Upper,900,organic")
    tried = load(world.farm, FIELDS, text, by=world.owner, keep=False)
    assert counts(tried) == (1, 0, 0)
    assert tried.first_rows == [(2, "new", ["Upper", "900", "organic"])]
    assert not world.farm.fields.filter(name="Upper").exists()


def test_nothing_is_saved_while_one_row_is_wrong(world):
    before = Change.objects.count()
    text = fields_csv("Upper,900,organic", "Lower,none,organic")
    tried = load(world.farm, FIELDS, text, by=world.owner)
    assert faults(tried) == [
        ("fields", 3, "area_m2", "“none” is not a number. Write it like 1234.5.")
    ]
    assert not world.farm.fields.filter(name="Upper").exists()
    assert Change.objects.count() == before


WRONG = {
    "a number": ("Upper,-5,organic", "area_m2", "This cannot be: it is too little"),
    "no name": (",900,organic", "name", "Something must stand here"),
    "no such status": ("Upper,900,wild", "status", "“wild” is none of these: organic,"),
    "too long": (f"{'x' * 81},900,organic", "name", "at most 80 characters"),
    "twice": ("North,900,organic", "name", "Another field has this name"),
    "larger than any farm": ("Upper,1e300,organic", "area_m2", "larger than any farm"),
    "infinite": ("Upper,inf,organic", "area_m2", "not a number"),
    "a formula": ("Upper,=1+1,organic", "area_m2", "“=1\\+1” is not a number"),
    "no text": ("Up\x00per,900,organic", None, "neither a table of text"),
    "a cell more": ("Upper,900,organic,wet", "", "has 4 cells, the header 3"),
    "a cell less": ("Upper,900", "", "has 2 cells, the header 3"),
}


@pytest.mark.parametrize("what", WRONG)
def test_what_is_wrong_is_told_by_row_and_column(world, what):
    row, column, sentence = WRONG[what]
    text = fields_csv("Lower,800,organic", row)
    if column is None:
        with pytest.raises(ValidationError, match=sentence):
            load(world.farm, FIELDS, text, by=world.owner)
        return
    (fault,) = faults(load(world.farm, FIELDS, text, by=world.owner))
    assert fault[:3] == ("fields", 3, column)
    assert re.search(sentence, fault[3])


HEADERS = {
    "name,area_m2 [ac]": ("area_m2 [ac]", "says ac; the cells must be in m2"),
    "name,acres": ("acres", "no such column"),
    "name,area_m2,name": ("name", "there twice"),
    "name,,area_m2": ("", "Column 2 has no name"),
    "name,area_m2 [m2": ("area_m2 [m2", "Column 2 has no name"),
}


@pytest.mark.parametrize("header", HEADERS)
def test_a_header_that_fits_no_column_is_told(world, header):
    cells = ",".join("1" for _ in header.split(","))
    tried = load(world.farm, FIELDS, f"{header}\r\n{cells}\r\n", by=world.owner)
    assert faults(tried)[0][:3] == ("fields", 1, HEADERS[header][0])
    assert HEADERS[header][1] in faults(tried)[0][3]


FILES = {
    "nothing": (b"", "is empty"),
    "blank": (b" \r\n ", "is empty"),
    "binary": (b"\x00\x01\x02name", "neither a table of text nor a workbook"),
    "another code page": ("name\r\nÖstra".encode("cp1252"), "Save it as UTF-8"),
    "a quote left open": (b'name\r\n"Upper\r\n', "quotation marks do not match"),
    "half a workbook": (b"PK\x03\x04 and then nothing", "damaged or not one"),
    "an empty zip": (b"PK\x05\x06" + bytes(18), "damaged or not one"),
}


@pytest.mark.parametrize("what", FILES)
def test_a_file_that_is_no_table_is_refused_in_plain_words(world, what):
    data, sentence = FILES[what]
    with pytest.raises(ValidationError, match=sentence):
        load(world.farm, FIELDS, {"fields": ("x", data)}, by=world.owner)


def test_a_workbook_that_unpacks_to_far_too_much_is_refused(world):
    data = io.BytesIO()
    with zipfile.ZipFile(data, "w", zipfile.ZIP_DEFLATED) as bomb:
        bomb.writestr("xl/worksheets/sheet1.xml", b" " * (201 * 1024**2))
    assert len(data.getvalue()) < 300_000
    with pytest.raises(ValidationError, match="too large"):
        load(world.farm, FIELDS, {"fields": ("x", data.getvalue())}, by=world.owner)


def test_more_rows_than_can_be_loaded_at_once_are_refused(world):
    text = fields_csv(*(f"Field {n},900,organic" for n in range(1001)))
    with pytest.raises(ValidationError, match="More than 1,000 rows"):
        load(world.farm, FIELDS, text, by=world.owner)


def test_a_cell_with_a_formula_is_refused_by_row_and_column(world):
    book = workbook(
        [
            ["name", "area_m2", "notes"],
            ["Upper", "=30*30", "dry"],
            ["=A2", 900, "wet"],
            ["Lower", 800, "=1/0"],
        ]
    )
    files = {"fields": ("x.xlsx", saved(book))}
    told = faults(load(world.farm, FIELDS, files, by=world.owner))
    assert [fault[1:3] for fault in told] == [(2, "area_m2"), (3, "name"), (4, "notes")]
    assert all("A formula stands here" in fault[3] for fault in told)


def test_numbers_and_days_typed_into_a_workbook_are_read_where_words_belong(world):
    kind = world.ours.kind.slug
    rows = [
        ["kind", "lot_number", "received_on", "received_kg", "variety"],
        [kind, 7301, dt.date(2026, 4, 1), 25, dt.date(2026, 1, 2)],
        [kind, "0073", dt.datetime(2026, 4, 1), 25.5, True],
    ]
    files = {"seed-lots": ("x.xlsx", saved(workbook(rows, "seed-lots")))}
    assert counts(load(world.farm, LOTS, files, by=world.owner)) == (2, 0, 0)
    told = SeedLot.objects.filter(received_on="2026-04-01").order_by("received_kg")
    assert list(told.values_list("lot_number", "variety")) == [
        ("7301", "2026-01-02"),
        ("0073", "yes"),
    ]


def test_semicolons_tabs_and_byte_order_marks_are_understood(world):
    text = "name;area_m2\r\nUpper;900\r\n"
    tabbed = "name\tarea_m2\r\nLower\t800\r\n"
    for data in (text.encode("utf-8-sig"), tabbed.encode("utf-16")):
        files = {"fields": ("x.csv", data)}
        assert counts(load(world.farm, FIELDS, files, by=world.owner)) == (1, 0, 0)


def test_a_field_without_an_area_has_that_of_its_sides_or_its_outline(world):
    header = "name,length_m,width_m,outline"
    ring = "[[-76.65,42.73],[-76.64,42.73],[-76.64,42.74],[-76.65,42.73]]"
    outline = f'"{{""type"":""Polygon"",""coordinates"":[{ring}]}}"'
    text = fields_csv("Bed,10,1.2,", f"Corner,,,{outline}", header=header)
    assert counts(load(world.farm, FIELDS, text, by=world.owner)) == (2, 0, 0)
    bed, corner = Field.objects.get(name="Bed"), Field.objects.get(name="Corner")
    assert (bed.area_m2, bed.measured) == (12, "sides")
    # Half of 819.5 m by 1111 m, the sides of that box on the WGS 84 ellipsoid.
    assert corner.area_m2 == pytest.approx(819.5 * 1111 / 2, rel=0.002)
    assert corner.measured == "outline"


def test_an_area_that_does_not_fit_the_sides_is_told(world):
    text = fields_csv("Bed,50,10,1.2", header="name,area_m2,length_m,width_m")
    told = faults(load(world.farm, FIELDS, text, by=world.owner))
    assert told == [
        ("fields", 2, "area_m2", "From the rest of the row this would be 12.")
    ]


def test_an_outline_that_crosses_itself_is_told_at_its_column(world):
    ring = "[[0,0],[0.01,0.01],[0.01,0],[0,0.01],[0,0]]"
    outline = f'"{{""type"":""Polygon"",""coordinates"":[{ring}]}}"'
    text = fields_csv(f"Corner,{outline}", header="name,outline")
    (told,) = faults(load(world.farm, FIELDS, text, by=world.owner))
    assert told[:3] == ("fields", 2, "outline")
    assert "crosses itself" in told[3]


def test_fields_may_be_part_of_fields_that_stand_below_them(world):
    header = "record_key,name,area_m2,parent"
    text = fields_csv("b,Bed,9,a", "a,Block,900,", header=header)
    assert counts(load(world.farm, FIELDS, text, by=world.owner)) == (2, 0, 0)
    assert Field.objects.get(name="Bed").parent.name == "Block"


def test_fields_that_are_part_of_each_other_are_refused(world):
    header = "record_key,name,area_m2,parent"
    text = fields_csv("b,Bed,9,a", "a,Block,900,b", header=header)
    told = faults(load(world.farm, FIELDS, text, by=world.owner))
    assert {fault[1:3] for fault in told} == {(2, "parent"), (3, "parent")}


def plantings_csv(*rows):
    header = "record_key,field_name,sown_on,area_m2,method"
    return "\r\n".join([header, *rows]) + "\r\n"


def lines_csv(*rows):
    return "\r\n".join(["planting,kind_name,seed_kg,share", *rows]) + "\r\n"


def both_tables(plantings, lines):
    return {
        "plantings": ("p.csv", plantings.encode()),
        "plantings-lines": ("l.csv", lines.encode()),
    }


def test_a_word_of_ones_own_ties_seed_lines_to_their_new_planting(world):
    KindFactory(farm=world.farm, slug="alder-hill--oats", name="Oats")
    files = both_tables(
        plantings_csv("first,North,2026-08-01,500,drilled", "2,North,2026-08-02,,"),
        lines_csv("first,Buckwheat,2,0.5", "first,Oats,3,0.5", "2,oats,4,"),
    )
    assert counts(load(world.farm, PLANTINGS, files, by=world.owner)) == (2, 0, 0)
    mix = Planting.objects.get(sown_on="2026-08-01")
    told = mix.lines.order_by("pk").values_list("kind__name", "seed_kg", "share")
    assert list(told) == [("Buckwheat", 2, 0.5), ("Oats", 3, 0.5)]
    whole = Planting.objects.get(sown_on="2026-08-02")
    assert whole.area_m2 == world.ours["fields"].area_m2
    assert whole.lines.get().share == 1
    assert counts(load(world.farm, PLANTINGS, files, by=world.owner)) == (0, 0, 2)


def test_the_rules_of_the_entry_form_hold_for_tables(world):
    files = both_tables(
        plantings_csv(
            "a,North,2031-01-01,500,drilled",
            "b,North,2026-08-01,99999,drilled",
            "c,North,2026-08-01,500,drilled",
            "d,North,2026-08-01,500,drilled",
        ),
        lines_csv("a,Buckwheat,2,1", "b,Buckwheat,2,1", "c,Buckwheat,2,0.5"),
    )
    assert faults(load(world.farm, PLANTINGS, files, by=world.owner)) == [
        ("plantings", 2, "sown_on", "This day is still to come."),
        ("plantings", 3, "area_m2", "This is more than the field has."),
        ("plantings", 4, "", "The shares of the mix add up to 50 %, not 100 %."),
        ("plantings", 5, "", "Say what was sown: a kind, or a seed lot."),
    ]


def test_what_is_wrong_with_a_part_is_told_in_its_own_table(world):
    files = both_tables(
        plantings_csv("a,North,2026-08-01,500,drilled"),
        lines_csv("a,Buckwheat,-2,1", "a,Clover,2,1", "z,Buckwheat,2,1", ",,,"),
    )
    told = faults(load(world.farm, PLANTINGS, files, by=world.owner))
    places = {fault[:3] for fault in told}
    assert ("plantings-lines", 3, "kind") in places
    assert ("plantings-lines", 4, "planting") in places
    assert any(fault[:2] == ("plantings-lines", 2) for fault in told)


def test_more_seed_than_a_lot_holds_is_told_at_the_line(world):
    lot = world.ours["seed-lots"]
    lines = f"planting,kind,lot,seed_kg\r\na,{lot.kind.slug},{lot.client_key},500\r\n"
    files = both_tables(plantings_csv("a,North,2026-08-01,500,drilled"), lines)
    (told,) = faults(load(world.farm, PLANTINGS, files, by=world.owner))
    assert told[:3] == ("plantings-lines", 2, "seed_kg")
    assert "The lot does not hold this much." in told[3]


def test_parts_stay_as_they_are_where_their_table_is_not_given(world):
    planting = world.ours["plantings"]
    text = f"record_key,notes\r\n{planting.client_key},late\r\n"
    assert counts(load(world.farm, PLANTINGS, text, by=world.owner)) == (0, 1, 0)
    assert planting.lines.count() == 1


def test_a_changed_part_is_a_change_of_its_record(world):
    files = out(world.farm, PLANTINGS)
    name, data = files["plantings-lines"]
    files["plantings-lines"] = name, data.replace(b",20,", b",21,")
    assert counts(load(world.farm, PLANTINGS, files, by=world.owner)) == (0, 1, 0)
    assert world.ours["plantings"].lines.get().seed_kg == 21
    assert Change.objects.latest("pk").after == {"lines.1.seed_kg": "21.0"}


def test_a_name_that_two_records_have_is_no_name(world):
    for lot_number in ("A", "B"):
        lot = SeedLotFactory(
            farm=world.farm, kind=world.ours.kind, lot_number=lot_number
        )
        PlantingFactory(
            farm=world.farm, field=world.ours["fields"], line__kind=lot.kind
        )
    text = "planting_name,seen_on,seen\r\nNorth · 2026-06-01,2026-07-04,emerged\r\n"
    told = faults(load(world.farm, BY_SLUG["observations"], text, by=world.owner))
    assert [fault[2] for fault in told] == ["planting"]
    assert "More than one is called" in told[0][3]


def test_records_of_another_farm_can_neither_be_named_nor_changed(world):
    theirs = world.theirs["fields"]
    text = f"record_key,name,area_m2\r\n{theirs.client_key},Mine,9\r\n"
    (told,) = faults(load(world.farm, FIELDS, text, by=world.owner))
    assert told[:3] == ("fields", 2, "record_key")
    text = f"name,area_m2,parent\r\nBed,9,{theirs.client_key}\r\n"
    (told,) = faults(load(world.farm, FIELDS, text, by=world.owner))
    assert told[:3] == ("fields", 2, "parent")
    assert "Nothing here has the key" in told[3]
    kind = world.theirs.kind.slug
    text = f"kind,lot_number,received_on,received_kg\r\n{kind},1,2026-04-01,2\r\n"
    (told,) = faults(load(world.farm, LOTS, text, by=world.owner))
    assert told[:3] == ("seed-lots", 2, "kind")
    theirs.refresh_from_db()
    assert theirs.name == "North"


def test_a_key_that_stands_twice_is_refused(world):
    key = world.ours["fields"].client_key
    text = f"record_key,name\r\n{key},A\r\n{str(key).upper()},B\r\n"
    (told,) = faults(load(world.farm, FIELDS, text, by=world.owner))
    assert told == ("fields", 3, "record_key", "This key is there twice.")


def test_voided_records_go_out_with_who_when_and_why(world):
    void(world.ours["incidents"], by=world.owner, now=NOW, reason="=written twice")
    header, row = rows_in(as_csv(world.farm, "incidents"))
    told = dict(zip(header, row, strict=True))
    assert told["void_reason"] == "'=written twice"
    assert told["voided_by"] == world.owner.email
    assert told["voided_at"] == "2026-11-25T09:30:00+00:00"


def test_a_reason_in_the_table_voids_a_record_that_nothing_leans_on(world):
    for slug, count in (("incidents", (0, 1, 0)), ("fields", None)):
        row = world.ours[slug]
        text = f"record_key,void_reason\r\n{row.client_key},written twice\r\n"
        tried = load(world.farm, BY_SLUG[slug], text, by=world.manager)
        row.refresh_from_db()
        if count:
            assert counts(tried) == count
            assert (row.voided_by, row.void_reason) == (world.manager, "written twice")
            assert Change.objects.latest("pk").verb == "voided"
        else:
            assert faults(tried)[0][:3] == ("fields", 2, "void_reason")
            assert row.voided_at is None


def test_what_is_voided_stays_as_it_is(world):
    row = world.ours["incidents"]
    void(row, by=world.owner, now=NOW, reason="written twice")
    for text in (
        f"record_key,void_reason\r\n{row.client_key},\r\n",
        f"record_key,notes\r\n{row.client_key},but still\r\n",
    ):
        (told,) = faults(load(world.farm, BY_SLUG["incidents"], text, by=world.owner))
        assert told[1:] == (2, "void_reason", "What is voided stays as it is.")


def test_a_row_new_and_voided_is_kept_voided(world):
    text = fields_csv("North,900,double", header="name,area_m2,void_reason")
    assert counts(load(world.farm, FIELDS, text, by=world.owner)) == (1, 0, 0)
    row = Field.objects.get(void_reason="double")
    assert (row.voided_by, row.voided_at) == (world.owner, NOW)
    verbs = Change.objects.filter(object_id=row.pk, noun="field").order_by("pk")
    assert [change.verb for change in verbs] == ["wrote", "voided"]


def test_words_of_a_choice_may_be_the_spoken_ones(world):
    text = fields_csv("Upper,900,Not organic", "Lower,900,NOT_ORGANIC")
    assert counts(load(world.farm, FIELDS, text, by=world.owner)) == (2, 0, 0)
    assert Field.objects.filter(status="not_organic").count() == 2


def test_a_table_takes_the_same_questions_however_long_it_is(
    world, django_assert_num_queries
):
    asked = []
    for _ in range(2):
        with CaptureQueriesContext(connection) as queries:
            for noun in NOUNS:
                out(world.farm, noun)
        asked.append(len(queries))
        for _ in range(4):
            field = FieldFactory(farm=world.farm, parent=world.ours["fields"])
            PlantingFactory(
                farm=world.farm, field=field, line__lot=world.ours["seed-lots"]
            )
    assert asked[0] == asked[1]


def post(client, world, noun, **files):
    address = reverse("records:load", args=[world.farm.slug, noun])
    sent = {
        name.replace("_", "-"): SimpleUploadedFile("x.csv", text.encode())
        for name, text in files.items()
    }
    return client.post(address, sent)


def held(answer):
    return dict(re.findall(r'name="(held-[a-z-]+)" value="([^"]+)"', answer))


def test_a_manager_sees_a_table_and_saves_it(world, as_person):
    client = as_person(world.manager)
    seen = post(client, world, "fields", fields=fields_csv("Upper,900,organic"))
    page = seen.content.decode()
    assert "Nothing is saved yet." in page
    assert "Upper" in page
    assert not world.farm.fields.filter(name="Upper").exists()
    save = reverse("records:load-save", args=[world.farm.slug, "fields"])
    answer = client.post(save, held(page), follow=True)
    assert "1 new, 0 changed, 0 already so." in answer.content.decode()
    assert world.farm.fields.get(name="Upper").written_by == world.manager
    answer = client.post(save, held(page), follow=True)
    assert "0 new, 0 changed, 1 already so." in answer.content.decode()


def test_faults_are_shown_and_no_button_to_save(world, as_person):
    client = as_person(world.manager)
    seen = post(client, world, "fields", fields=fields_csv("Upper,<b>,organic"))
    page = seen.content.decode()
    assert "1 thing to put right" in page
    assert "“&lt;b&gt;” is not a number" in page
    assert "Save this table" not in page
    seen = post(client, world, "fields", fields="\r\n")
    assert "is empty" in seen.content.decode()


def test_parts_are_handed_in_beside_their_records(world, as_person):
    seen = post(
        as_person(world.owner),
        world,
        "plantings",
        plantings=plantings_csv("a,North,2026-08-01,500,drilled"),
        plantings_lines=lines_csv("a,Buckwheat,2,1"),
    )
    assert set(held(seen.content.decode())) == {
        "held-plantings",
        "held-plantings-lines",
    }


def test_a_file_set_aside_by_another_farm_is_not_saved_here(world, as_person):
    theirs = post(
        as_person(world.stranger),
        world.theirs,
        "fields",
        fields=fields_csv("Upper,900,organic"),
    )
    save = reverse("records:load-save", args=[world.farm.slug, "fields"])
    sent = held(theirs.content.decode())
    assert sent
    answer = as_person(world.owner).post(save, sent, follow=True)
    assert "Choose it again" in answer.content.decode()
    assert not Field.objects.filter(name="Upper").exists()


def test_the_crew_saves_lists_and_loads_nothing(world, as_person):
    client = as_person(world.crew)
    page = client.get(reverse("records:list", args=[world.farm.slug, "fields"]))
    assert "table.xlsx" in page.content.decode()
    assert "Load a table" not in page.content.decode()
    assert post(client, world, "fields", fields="name\r\n").status_code == 403


def test_a_list_is_saved_as_it_is_narrowed_with_the_voided_in_it(world, as_person):
    farm = world.farm
    FieldFactory(farm=farm, name="Buffer strip", status="buffer")
    gone = FieldFactory(farm=farm, name="Gone strip", status="buffer")
    void(gone, by=world.owner, now=NOW, reason="sold")
    client = as_person(world.inspector)
    page = client.get(
        reverse("records:list", args=[farm.slug, "fields"]) + "?status=buffer"
    ).content.decode()
    address = re.search(r'href="([^"]+table\.csv[^"]*)"', page)[1].replace("&amp;", "&")
    answer = client.get(address)
    told = [row[1] for row in rows_in(answer.content.decode())]
    assert told == ["name", "Buffer strip", "Gone strip"]
    assert answer["Content-Type"] == "text/csv; charset=utf-8"
    assert answer["Content-Disposition"].endswith('filename="alder-hill-fields.csv"')


def test_parts_are_saved_from_their_records_list(world, as_person):
    client = as_person(world.owner)
    address = reverse("records:table-csv", args=[world.farm.slug, "plantings"])
    told = rows_in(client.get(f"{address}?of=lines").content.decode())
    assert [len(told), told[0][0]] == [2, "planting"]
    assert client.get(f"{address}?of=horses").status_code == 404
    book = reverse("records:table-xlsx", args=[world.farm.slug, "plantings"])
    assert sheets_of(client.get(book).content).sheetnames == [
        "plantings",
        "plantings-lines",
    ]


@pytest.mark.parametrize("noun", NOUNS, ids=lambda noun: noun.slug)
def test_every_page_for_loading_names_the_columns(world, as_person, noun):
    address = reverse("records:load", args=[world.farm.slug, noun.slug])
    page = as_person(world.owner).get(address).content.decode()
    for table in tables_of(noun):
        for column in table.columns:
            if not column.is_told:
                assert escape(column.header) in page
