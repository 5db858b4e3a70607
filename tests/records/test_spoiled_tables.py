"""Tables and outlines spoiled in every way: refused in words, never loaded in part."""

import datetime as dt
import io
import json

from django.core.exceptions import ValidationError
from django.core.files.uploadedfile import SimpleUploadedFile
from django.db import transaction
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from openpyxl import Workbook

from farm.forms.outlines import OutlineFileField
from farm.models import Change
from records.nouns import BY_SLUG
from records.tables import trial

NOW = dt.datetime(2026, 11, 25, 9, 30, tzinfo=dt.UTC)
FIELDS = BY_SLUG["fields"]
KEYS = [f"3f2b8c1e-0000-4000-8000-00000000000{n}" for n in range(3)]
HEADER = ["key", "name", "kind", "area_m2 [m2]", "status", "notes"]
ROWS = [
    [key, f"Piece {n}", "field", "900", "organic", ""] for n, key in enumerate(KEYS)
]
SLOW = {"deadline": None, "suppress_health_check": list(HealthCheck)}

ODD_CELLS = st.one_of(
    st.sampled_from(
        [
            "=1+1",
            "@SUM(A1)",
            '=HYPERLINK("x")',
            "-",
            "1e999",
            "nan",
            "9" * 400,
            "x" * 200_000,
            '"',
            "\x00",
            "\ud800",
            "’",
            "12/31/2026",
            "TRUE",
            *KEYS,
        ]
    ),
    st.text(max_size=12),
)
PLACES = st.tuples(st.integers(0, 3), st.integers(0, 6))


@st.composite
def grids(draw):
    """A sound grid with a cell or row put wrong here and there."""
    rows = [list(row) for row in [HEADER, *ROWS]]
    for at, across in draw(st.lists(PLACES, max_size=4)):
        row = rows[at % len(rows)]
        how = draw(st.sampled_from(["cell", "less", "more", "twice", "gone"]))
        if how == "cell" and row:
            row[across % len(row)] = draw(ODD_CELLS)
        elif how == "less":
            del row[across:]
        elif how == "more":
            row.insert(across, draw(ODD_CELLS))
        elif how == "twice":
            rows.append(list(row))
        elif len(rows) > 1:
            rows.remove(row)
    return rows


@st.composite
def cut_or_turned(draw, data):
    """Bytes as they are, or with a piece lost or exchanged."""
    how = draw(st.sampled_from(["whole", "whole", "cut", "turned", "spliced"]))
    # A workbook is a byte longer or shorter from one hour to the next.
    at = draw(st.integers(0, 9_999)) * len(data) // 10_000
    if how == "cut":
        return data[:at]
    if how == "turned":
        return data[:at] + bytes([data[at] ^ 0xFF]) + data[at + 1 :] if data else data
    if how == "spliced":
        return data[:at] + draw(st.binary(max_size=8)) + data[at:]
    return data


@st.composite
def texts(draw):
    """Comma-separated text in some encoding and of some shape."""
    mark, end = draw(st.sampled_from([",", ";", "\t", "|"])), draw(ENDINGS)
    quoted = draw(st.booleans())
    lines = [
        mark.join(f'"{cell}"' if quoted else cell for cell in row)
        for row in draw(grids())
    ]
    encoding = draw(
        st.sampled_from(["utf-8", "utf-8-sig", "utf-16", "utf-16-le", "latin-1"])
    )
    data = end.join(lines).encode(encoding, "replace")
    return draw(cut_or_turned(data))


ENDINGS = st.sampled_from(["\r\n", "\n", "\r", "\n\n"])


@st.composite
def workbooks(draw):
    """A workbook with formulas, numbers and days where they do not belong."""
    book = Workbook()
    sheet = book.active
    typed = st.sampled_from([0, -1, 1e300, True, dt.date(1900, 1, 1), "#REF!", "=A1"])
    for row in draw(grids()):
        safe = [cell[:30_000].encode("utf-8", "ignore").decode() for cell in row]
        sheet.append(["".join(c for c in cell if c >= " ") for cell in safe])
    for at, across in draw(st.lists(PLACES, max_size=3)):
        sheet.cell(at + 1, across + 1).value = draw(typed)
    if draw(st.booleans()):
        book.create_sheet(draw(st.sampled_from(["fields", "edges", "more"])))
    out = io.BytesIO()
    book.save(out)
    return draw(cut_or_turned(out.getvalue()))


def is_loaded_whole_or_not_at_all(world, data):
    rows = FIELDS.model.objects.filter(farm=world.farm)
    with transaction.atomic():
        before = rows.count(), Change.objects.count()
        try:
            tried = trial.try_out(
                FIELDS,
                {"fields": ("spoiled.csv", data)},
                farm=world.farm,
                by=world.owner,
                now=NOW,
                keep=True,
            )
            new = 0 if tried.outcome.faults else tried.counts["new"]
        except ValidationError as refused:
            assert all(refused.messages)
            new = 0
        after = rows.count(), Change.objects.count()
        transaction.set_rollback(True)
    return after == (before[0] + new, before[1] + new)


@settings(max_examples=110, **SLOW)
@given(data=texts())
def test_a_spoiled_text_is_loaded_whole_or_not_at_all(world, data):
    assert is_loaded_whole_or_not_at_all(world, data)


@settings(max_examples=60, **SLOW)
@given(data=workbooks())
def test_a_spoiled_workbook_is_loaded_whole_or_not_at_all(world, data):
    assert is_loaded_whole_or_not_at_all(world, data)


RING = [[-76.65, 42.73], [-76.64, 42.73], [-76.64, 42.74], [-76.65, 42.73]]
GEOJSON = json.dumps(
    {
        "type": "FeatureCollection",
        "features": [
            {
                "type": "Feature",
                "properties": {},
                "geometry": {"type": "Polygon", "coordinates": [RING]},
            }
        ],
    }
)
KML = (
    '<?xml version="1.0"?><kml xmlns="http://www.opengis.net/kml/2.2"><Placemark>'
    "<Polygon><outerBoundaryIs><LinearRing><coordinates>"
    + " ".join(f"{x},{y},0" for x, y in RING)
    + "</coordinates></LinearRing></outerBoundaryIs></Polygon></Placemark></kml>"
)


@st.composite
def outlines(draw):
    text = draw(st.sampled_from([GEOJSON, KML]))
    for at, piece in draw(
        st.lists(st.tuples(st.integers(0, len(text)), PIECES), min_size=1, max_size=4)
    ):
        text = text[:at] + piece + text[at + draw(st.integers(0, 12)) :]
    return draw(cut_or_turned(text.encode(draw(st.sampled_from(ENCODINGS)), "replace")))


ENCODINGS = ["utf-8", "utf-8-sig", "utf-16", "latin-1"]
PIECES = st.sampled_from(
    ["[", "]]", "{", "}", "null", "1e999", "NaN", "9" * 400, "&#0;", "&x;", "<", "]]>"]
    + ["<!DOCTYPE x [<!ENTITY a 'b'>]>", '"', ",", "\x00", "-200", "é", "", "[" * 2000]
)


@settings(max_examples=190, **SLOW)
@given(data=outlines())
def test_a_spoiled_outline_is_read_or_refused_with_a_sentence(data):
    try:
        outline = OutlineFileField().clean(SimpleUploadedFile("x.kml", data))
    except ValidationError as refused:
        assert all(refused.messages)
    else:
        assert outline is not None and outline.as_geojson()["coordinates"]
