"""The outline of a field through its form, and all outlines out again."""

import json

import pytest
from django.core.files.uploadedfile import SimpleUploadedFile
from django.urls import reverse

from farm.models import Field
from farm.outlines import as_kept, read_outline
from farm.units import M2_PER_ACRE
from tests.factories import FieldFactory
from tests.farm.test_kml import ACRE, OUTER, as_geojson, kml, polygon
from tests.records.typed import typed

BOW_TIE = "42, -77\n42.1, -76.9\n42, -76.9\n42.1, -77\n"
ACRE_M2 = 4046.5976


@pytest.fixture
def sent(world, owner_client):
    """Send the form of a new field; give back the answer."""

    def send(**boxes):
        url = reverse("records:new", args=[world.farm.slug, "fields"])
        return owner_client.post(url, typed("fields", world.ours, area="", **boxes))

    return send


def said(answer, box):
    return [str(message) for message in answer.context["form"].errors[box]]


def file(content, name="outline.kml"):
    return SimpleUploadedFile(
        name, content if isinstance(content, bytes) else content.encode()
    )


def south():
    return Field.objects.get(name="South")


@pytest.mark.parametrize("text", [ACRE, ACRE.replace(", ", " ")])
def test_typed_corners_become_the_outline_and_its_area(sent, text):
    assert sent(outline_text=text).status_code == 302
    row = south()
    assert row.area_m2 == pytest.approx(ACRE_M2, abs=5e-5)
    assert (row.measured, row.outline["type"]) == ("outline", "Polygon")


def test_pasted_kml_and_pasted_geojson_become_the_same_outline(sent):
    sent(outline_text=kml(polygon(OUTER)))
    sent(outline_text=as_geojson(OUTER), name="East")
    assert south().outline == Field.objects.get(name="East").outline


@pytest.mark.parametrize(
    ("content", "name"),
    [
        (kml(polygon(OUTER)), "field.kml"),
        (as_geojson(OUTER), "field.geojson"),
        ("\ufeff" + as_geojson(OUTER), "field.json"),
        (ACRE, "corners.txt"),
    ],
)
def test_a_file_becomes_the_outline_whatever_the_box_holds(sent, content, name):
    assert (
        sent(outline_text="no corner", outline_file=file(content, name)).status_code
        == 302
    )
    assert south().measured == "outline"


def test_a_file_that_was_read_stands_in_the_box_when_another_box_is_wrong(sent):
    answer = sent(name="", outline_file=file(kml(polygon(OUTER))))
    assert answer.status_code == 200
    assert "38.8725326, -77.0578846" in answer.content.decode()


def test_a_self_crossing_outline_is_not_saved_and_its_place_is_told(sent):
    answer = sent(outline_text=BOW_TIE)
    assert said(answer, "outline_text") == [
        "The outline crosses itself near 42.05000, -76.95000 (latitude, longitude)."
    ]
    assert "42.1, -76.9" in answer.content.decode()
    assert not Field.objects.filter(name="South").exists()


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("by the oak", "A corner is a latitude and a longitude"),
        ("<kml><Polygon>", "This is not KML. Look at line 1, column 15."),
        ("{", "This is not GeoJSON."),
        ("<!DOCTYPE kml><kml/>", "declares a document type"),
        ("1, 2\n3, 4", "three corners or more"),
        ("-76.65, 42.73\n-76.6, 42.73\n-76.6, 42.8", "look swapped"),
    ],
)
def test_what_is_no_outline_is_said_beside_the_box_and_stays_in_it(sent, text, told):
    answer = sent(outline_text=text)
    assert told in said(answer, "outline_text")[0]
    assert answer.context["form"]["outline_text"].value() == text
    assert not Field.objects.filter(name="South").exists()


@pytest.mark.parametrize(
    ("content", "told"),
    [
        (b"", "empty"),
        (b"PK\x03\x04...", "packed"),
        (b"\x89PNG\r\n\x1a\n\x00\x00", "A corner is"),
        (b"\xff\xfe\x00", "A corner is"),
        (b"[" * 5000, "too many layers"),
        (b" " * 2_000_001, "too large"),
    ],
)
def test_a_file_that_is_no_outline_is_refused_beside_its_box(sent, content, told):
    answer = sent(outline_text=ACRE, outline_file=file(content))
    assert told in said(answer, "outline_file")[0]
    assert answer.context["form"]["outline_text"].value() == ACRE
    assert not Field.objects.filter(name="South").exists()


def test_saving_a_field_untouched_keeps_its_outline(world, sent, owner_client):
    sent(outline_text=as_geojson(OUTER))
    row, before = south(), south().outline
    url = reverse("records:edit", args=[world.farm.slug, "fields", row.pk])
    form = owner_client.get(url).context["form"]
    boxes = {name: form[name].value() or "" for name in form.fields}
    assert owner_client.post(url, {**boxes, "outline_file": ""}).status_code == 302
    assert south().outline == before


def test_the_form_offers_a_file_and_the_script_that_walks(world, owner_client):
    url = reverse("records:new", args=[world.farm.slug, "fields"])
    page = owner_client.get(url).content.decode()
    assert 'enctype="multipart/form-data"' in page
    assert 'src="/static/farm/walk.js"' in page and 'type="module"' in page
    assert "data-walk=" in page and "latitude first" in page


def test_outlines_go_out_as_rfc_7946_writes_them(world, sent, owner_client):
    # RFC 7946, 3.1.6: outer rings counter-clockwise; 4: no reference system.
    clockwise = [one.split(",")[:2] for one in OUTER.split()][::-1]
    sent(outline_text=as_geojson(" ".join(",".join(one) for one in clockwise)))
    answer = owner_client.get(reverse("records:outlines", args=[world.farm.slug]))
    assert answer["Content-Type"] == "application/geo+json"
    told = json.loads(answer.content)
    assert set(told) == {"type", "features"}
    (feature,) = told["features"]
    assert feature["properties"] == {
        "name": "South",
        "kind": "field",
        "area_m2": round(south().area_m2, 2),
        "status": "organic",
    }
    (ring,) = feature["geometry"]["coordinates"]
    turned = sum(
        a[0] * b[1] - b[0] * a[1] for a, b in zip(ring, ring[1:], strict=False)
    )
    assert turned > 0
    assert all(
        len(str(number).partition(".")[2]) <= 7 for one in ring for number in one
    )


def test_what_went_out_comes_in_again(world, sent, owner_client):
    sent(outline_text=ACRE)
    out = owner_client.get(reverse("records:outlines", args=[world.farm.slug]))
    again = read_outline(out.content.decode())
    assert again.as_geojson() == as_kept(south().outline).as_geojson()


def test_outlines_take_the_same_queries_for_one_field_or_many(
    world, owner_client, django_assert_num_queries
):
    for number in range(20):
        FieldFactory(
            farm=world.farm,
            written_by=world.owner,
            name=f"Plot {number}",
            area_m2=M2_PER_ACRE,
            outline=read_outline(as_geojson(OUTER)).as_geojson(),
        )
    with django_assert_num_queries(4):
        told = owner_client.get(reverse("records:outlines", args=[world.farm.slug]))
    assert len(told.json()["features"]) == 20
