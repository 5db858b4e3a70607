"""The pages for tables."""

import re

import pytest
from django.core.files.uploadedfile import SimpleUploadedFile
from django.urls import reverse
from django.utils.html import escape

from farm.models import Field
from farm.writing import void
from records.nouns import NOUNS
from records.tables import tables_of
from tests.factories import (
    FieldFactory,
)
from tests.records.tables.papers import (
    NOW,
    fields_csv,
    lines_csv,
    plantings_csv,
    rows_in,
    sheets_of,
)


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
