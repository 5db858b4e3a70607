"""What is wrong with a table, in plain words."""

import io
import re
import zipfile

import pytest
from django.core.exceptions import ValidationError

from tests.records.tables.papers import (
    FIELDS,
    faults,
    fields_csv,
    load,
)

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
