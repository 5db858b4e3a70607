"""What a cell may hold, and what is made of it."""

import datetime as dt

import pytest

from farm.models import Field
from records.models import SeedLot
from tests.records.tables.papers import (
    FIELDS,
    LOTS,
    counts,
    faults,
    fields_csv,
    load,
    saved,
    workbook,
)


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
