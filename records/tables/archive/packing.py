"""A farm put into one file."""

from __future__ import annotations

import datetime as dt
import hashlib
import json
import zipfile
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from typing import IO, Any

from django.core.files.storage import Storage
from django.db import models, transaction

from farm.models import ChangeHead, Farm, Field, Membership, User
from records.tables import texts
from records.tables.archive import manifest
from records.tables.archive.contents import (
    Kept,
    farm_table,
    kept,
    people_table,
)
from records.tables.archive.manifest import Manifest, Member, chunks
from records.tables.archive.opening import FILES
from records.tables.layout import Table

OUTLINES = "fields.geojson"
# The same farm gives the same bytes, whenever it is saved.
STAMP = (1980, 1, 1, 0, 0, 0)


@dataclass(frozen=True)
class Saved:
    """How much an archive holds, and which papers were already lost."""

    rows: int
    files: int
    lost: list[str]


def save_farm(farm: Farm, target: IO[bytes], *, now: dt.datetime) -> Saved:
    """Write everything a farm has into a zip file of tables and papers."""
    told = Manifest(farm.name, farm.slug, now)
    tables = sorted(kept(), key=lambda one: one.member)
    with zipfile.ZipFile(target, "w", zipfile.ZIP_DEFLATED) as out:
        with transaction.atomic():
            # While the last change is held, nobody can write another.
            ChangeHead.held(farm)
            papers = list(_papers(tables, farm))
            for name, table, rows in _tables(tables, farm):
                _add_table(out, told, name, table, rows)
        _add(out, told, OUTLINES, [_outlines(farm)])
        for storage, name in papers:
            _add_paper(out, told, storage, name)
        with out.open(_info(manifest.NAME), "w") as stream:
            stream.write(told.as_json())
    rows = sum(one.rows or 0 for one in told.members.values())
    files = sum(name.startswith(FILES) for name in told.members)
    return Saved(rows, files, told.lost)


def _tables(tables: list[Kept], farm: Farm) -> Iterator[tuple[str, Table, Any]]:
    yield "farm.csv", farm_table(), [farm]
    yield "people.csv", people_table(), _people(tables, farm)
    for one in tables:
        yield one.member, one.table, one.rows(farm).iterator(chunk_size=2000)


def _people(tables: list[Kept], farm: Farm) -> Any:
    """Everybody who is on the farm or whose hand is in its records."""
    found = set(Membership.objects.filter(farm=farm).values_list("user", flat=True))
    for one in tables:
        for field in one.table.model._meta.concrete_fields:
            if field.related_model is User:
                rows = one.rows(farm).select_related(None).order_by()
                found |= set(rows.values_list(field.attname, flat=True).distinct())
    return User.objects.filter(pk__in=found - {None}).order_by("pk")


def _papers(tables: list[Kept], farm: Farm) -> Iterator[tuple[Storage, str]]:
    """Every file that a row of the farm names, with where it is kept."""
    for one in tables:
        for field in one.table.model._meta.concrete_fields:
            if isinstance(field, models.FileField):
                rows = one.rows(farm).values_list(field.name, flat=True)
                yield from ((field.storage, name) for name in rows if name)


def _add_table(
    out: zipfile.ZipFile, told: Manifest, name: str, table: Table, rows: Iterable[Any]
) -> None:
    lines = [line.encode() for line in texts.lines(table, table.tell(rows))]
    _add(out, told, name, lines, rows=len(lines) - 1)


def _add_paper(
    out: zipfile.ZipFile, told: Manifest, storage: Storage, name: str
) -> None:
    if f"{FILES}{name}" in told.members:
        return
    try:
        with storage.open(name) as stream:
            _add(out, told, f"{FILES}{name}", chunks(stream))
    except FileNotFoundError:
        told.lost.append(name)


def _add(
    out: zipfile.ZipFile,
    told: Manifest,
    name: str,
    pieces: Iterable[bytes],
    *,
    rows: int | None = None,
) -> None:
    length, digest = 0, hashlib.sha256()
    with out.open(_info(name), "w", force_zip64=True) as stream:
        for piece in pieces:
            stream.write(piece)
            length += len(piece)
            digest.update(piece)
    told.members[name] = Member(length, digest.hexdigest(), rows)


def _info(name: str) -> zipfile.ZipInfo:
    info = zipfile.ZipInfo(name, STAMP)
    info.compress_type = zipfile.ZIP_DEFLATED
    # Records hold people's names: for the one who unpacks them alone.
    info.external_attr = 0o600 << 16
    return info


def _outlines(farm: Farm) -> bytes:
    """The outlines of all fields as one map; RFC 7946."""
    fields = Field.objects.filter(farm=farm, outline__isnull=False).order_by("pk")
    features = [
        {
            "type": "Feature",
            "id": str(field.client_key),
            "geometry": field.outline,
            "properties": {
                "name": field.name,
                "area_m2": field.area_m2,
                "voided": field.voided_at is not None,
            },
        }
        for field in fields
    ]
    collection = {"type": "FeatureCollection", "features": features}
    return json.dumps(collection, ensure_ascii=False).encode()
