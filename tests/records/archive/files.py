"""Archives made, taken apart and put together again by hand."""

import csv
import datetime as dt
import hashlib
import io
import json
import os
import zipfile

import pytest
from django.conf import settings
from django.core.files.base import ContentFile
from django.core.files.storage import default_storage
from django.db import connection, transaction

from farm.writing import void, write
from records.models import Attachment
from records.tables.archive import ArchiveError, restore_farm, save_farm
from records.tables.archive.contents import kept
from tests.factories import (
    FieldFactory,
    WeatherDayFactory,
)

# test run gets other numbers there, and its history is sealed anew.
numbers_come_again = pytest.mark.skipif(
    connection.vendor == "postgresql",
    reason="row numbers do not come again after a rollback on PostgreSQL",
)


NOW = dt.datetime(2026, 11, 25, 9, 30, 0, 123456, tzinfo=dt.UTC)
TODAY = NOW.date()
OUTLINE = {
    "type": "Polygon",
    "coordinates": [
        [[-76.65, 42.73], [-76.64, 42.73], [-76.64, 42.74], [-76.65, 42.73]]
    ],
}
PICTURE = b"\xff\xd8\xff\xe0 not much of a picture"


def archived(farm):
    out = io.BytesIO()
    save_farm(farm, out, now=NOW)
    return out.getvalue()


def members(data):
    with zipfile.ZipFile(io.BytesIO(data)) as archive:
        return {name: archive.read(name) for name in archive.namelist()}


def restored(data, owner="owner@example.org", **more):
    return restore_farm(io.BytesIO(data), owner=owner, today=TODAY, **more)


def lived_on(world):
    """Give the farm a history, odd words, a cold night and a picture."""
    farm, by = world.farm, world.owner
    field = world.ours["fields"]
    field.name, field.outline = "=North", OUTLINE
    field.notes = 'two\r\nlines, “quoted” "twice"\n🌾 קצה'
    write(field, by=by, now=NOW)
    bed = FieldFactory.build(farm=farm, name="-15.6", parent=field)
    write(bed, by=world.crew, now=NOW)
    field.parent = bed
    write(field, by=by, now=NOW)
    lot = world.ours["seed-lots"]
    lot.lot_number = "007"
    write(lot, by=by, now=NOW)
    void(world.ours["incidents"], by=by, now=NOW, reason="=written twice")
    station = world.ours["stations"]
    WeatherDayFactory(station=station, day=dt.date(2026, 1, 5), tmin_c=-15.6)
    WeatherDayFactory(
        station=station, day=dt.date(2026, 1, 6), tmin_c=0.1 + 0.2, rain_mm=None
    )
    name = default_storage.save("attachments/9/tag.jpg", ContentFile(PICTURE))
    paper = Attachment(
        farm=farm,
        noun="seedlot",
        object_id=lot.pk,
        shows="the tag",
        type="image/jpeg",
        file=name,
        bytes=len(PICTURE),
        sha256=hashlib.sha256(PICTURE).hexdigest(),
    )
    write(paper, by=by, now=NOW)
    return farm


def owner_of(data):
    people = csv.DictReader(io.StringIO(members(data)["memberships.csv"].decode()))
    return next(row["user"] for row in people if row["role"] == "owner")


def packed(told, *, manifest=None):
    """An archive of these members, with a list of them unless another is given."""
    told = {name: data for name, data in told.items() if name != "manifest.json"}
    if manifest is None:
        manifest = listing(told)
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w", zipfile.ZIP_DEFLATED) as archive:
        for name, data in told.items():
            archive.writestr(name, data)
        archive.writestr("manifest.json", json.dumps(manifest))
    return out.getvalue()


def listing(told, **over):
    return {
        "what": "farm archive",
        "version": 1,
        "farm": "Alder Hill",
        "slug": "alder-hill",
        "saved_at": NOW.isoformat(),
        "lost": [],
        "members": {
            name: {"bytes": len(data), "sha256": hashlib.sha256(data).hexdigest()}
            for name, data in told.items()
        },
    } | over


def nothing_is_here():
    tables = [one.table.model for one in kept() if one.table.name != "kinds"]
    files = [name for _, _, names in os.walk(settings.MEDIA_ROOT) for name in names]
    return not any(model._default_manager.exists() for model in tables) and not files


def refusal(data):
    """Why an archive is refused; nothing of it may be left."""
    with pytest.raises(ArchiveError) as refused, transaction.atomic():
        restored(data)
    assert nothing_is_here()
    return str(refused.value)


def manifest(data):
    return json.loads(members(data)["manifest.json"])


def both(one, other):
    one, other = members(one), members(other)
    return {name: (one[name], other[name]) for name in one if name.endswith(".csv")}


def plain(data, without):
    rows = csv.DictReader(io.StringIO(data.decode(), newline=""))
    return [{key: row[key] for key in row if key not in without} for row in rows]


def less(data, name):
    return {key: value for key, value in members(data).items() if key != name}


def without(data, name):
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w") as archive:
        for key, value in less(data, name).items():
            archive.writestr(key, value)
    return out.getvalue()


def with_member(data, name, content=b"x"):
    return packed({**members(data), name: content})


def replaced(data, name, old, new, *, rows=False, twice=False):
    told = members(data)
    head, _, body = told[name].partition(b"\r\n")
    if rows:
        body = b""
    elif twice:
        body += body
    else:
        body = body.replace(old, new)
    return packed({**told, name: head + b"\r\n" + body})
