"""What the story keeps for the certifier: papers, edges, what left the field."""

from __future__ import annotations

import datetime as dt
import hashlib
from collections.abc import Mapping

from django.core.files.base import ContentFile

from farm import units
from farm.models import Edge
from records.models import (
    ApplicatorLicence,
    Attachment,
    CertifierNumber,
    CleanOut,
    CompostBatch,
    CompostDay,
    Duty,
    Grazing,
    HarvestLot,
    Incident,
    RulesFollowed,
    Sale,
    SeedLot,
    SeedSearch,
    SourceAsked,
    Storage,
    Training,
)
from records.reading.demo import plain
from records.reading.demo.book import Book
from records.reading.demo.plain import Told
from records.reading.demo.sheet import Parts, Sheet, find, put, same
from records.reading.demo.tags import label_of, tag_of


def asked(row: SeedSearch, told: Told, book: Book) -> Parts:
    """Tell whom one asked by "Two Magpies Seed, 2016-01-12: none left"."""
    rows = []
    for text in told.get("asked", ()):
        source, _colon, answer = text.partition(": ")
        name, day = source.rsplit(", ", 1)
        rows.append(SourceAsked(source=name, asked_on=plain.day(day), answer=answer))
    return {"asked": rows}


def log(row: CompostBatch, told: Told, book: Book) -> Parts:
    """Tell a heap's days from the first on, by "140, 138 turned, 141"."""
    rows = []
    first = plain.day(told.get("log_from", told["on"]))
    for number, text in enumerate(filter(None, told.get("log", "").split(", "))):
        day = first + dt.timedelta(days=number)
        temp_c = units.c_from_f(float(text.removesuffix(" turned")))
        turned = text.endswith(" turned")
        rows.append(CompostDay(day=day, temp_c=temp_c, turned=turned))
    return {"days": rows}


def tag(row: Attachment, told: Told, book: Book) -> Parts:
    """The tag of a seed lot, or the label of a product."""
    name = told["of"]
    of = book.lots[name] if name in book.lots else book.products[name]
    data = tag_of(of) if isinstance(of, SeedLot) else label_of(of)
    row.noun, row.object_id = str(of._meta.model_name), of.pk
    row.type = Attachment.Type.PDF
    row.bytes, row.sha256 = len(data), hashlib.sha256(data).hexdigest()
    row.file.save("tag.pdf", ContentFile(data), save=False)
    return {}


def passed_over(value: str, book: Book) -> Mapping[str, object]:
    """A word that is read elsewhere."""
    return {}


NOTES = same("notes")
WEIGHT = {"weight": put("mass_kg", units.parse_mass)}
LOT = {"lot": find("lot", "crops")}
FIELD = {"field": find("field", "fields")}
PLANTING = {"planting": find("planting", "plantings")}

PAPERS: Mapping[str, Sheet] = {
    "rules_followed": Sheet(
        RulesFollowed, {**NOTES, **same("which"), "since": put("since", plain.day)}
    ),
    "certifier_numbers": Sheet(
        CertifierNumber, same("key", "value", "low", "high", "note", "document")
    ),
    "edges": Sheet(
        Edge,
        {
            **NOTES,
            **FIELD,
            **same("side", "neighbour", "barrier"),
            "buffer": put("buffer_m", units.parse_length),
        },
    ),
    "searches": Sheet(
        SeedSearch,
        {
            **NOTES,
            **same("traits", "reason"),
            "kind": find("kind", "kinds"),
            "lot": find("lot", "lots"),
            "on": put("searched_on", plain.day),
            "asked": passed_over,
        },
        finish=asked,
    ),
    "papers": Sheet(
        Attachment,
        {**same("shows"), "of": passed_over, "on": put("taken_on", plain.day)},
        finish=tag,
    ),
    "heaps": Sheet(
        CompostBatch,
        {
            **NOTES,
            **same("name", "feedstocks"),
            "ratio": put("carbon_nitrogen"),
            "how": put("method", plain.code),
            "on": put("started_on", plain.day),
            "until": put("finished_on", plain.day),
            "log": passed_over,
            "log_from": passed_over,
        },
        finish=log,
    ),
    "harvests": Sheet(
        HarvestLot,
        {
            **NOTES,
            **FIELD,
            **PLANTING,
            **WEIGHT,
            **same("code", "crop", "use", "status", "from_buffer", "touches_soil"),
            "on": put("harvested_on", plain.day),
        },
    ),
    "storages": Sheet(
        Storage,
        {**NOTES, **LOT, **WEIGHT, **same("place"), "on": put("stored_on", plain.day)},
    ),
    "sales": Sheet(
        Sale,
        {
            **NOTES,
            **LOT,
            **WEIGHT,
            **same("buyer", "status", "invoice", "transport"),
            "on": put("sold_on", plain.day),
        },
    ),
    "clean_outs": Sheet(
        CleanOut,
        {
            **NOTES,
            **same("held_before", "method"),
            "machine": find("equipment", "machines"),
            "on": put("cleaned_on", plain.day),
        },
    ),
    "incidents": Sheet(
        Incident,
        {
            **NOTES,
            **FIELD,
            **same("what", "account", "done_about_it", "told_to"),
            "on": put("noticed_on", plain.day),
        },
    ),
    "grazings": Sheet(
        Grazing,
        {
            **NOTES,
            **FIELD,
            **PLANTING,
            **same("animals", "head", "owner", "label_checked"),
            "on": put("in_on", plain.day),
            "out": put("out_on", plain.day),
        },
    ),
    "duties": Sheet(
        Duty,
        {
            **NOTES,
            **FIELD,
            **same("what"),
            "from": put("earliest_on", plain.day),
            "until": put("latest_on", plain.day),
            "who": find("who_for", "people"),
        },
    ),
    "licences": Sheet(
        ApplicatorLicence,
        {
            **NOTES,
            **same("holder", "number", "state", "category"),
            "since": put("since", plain.day),
            "until": put("until", plain.day),
        },
    ),
    "trainings": Sheet(
        Training,
        {
            **NOTES,
            **same("person", "subject", "topic", "trainer"),
            "on": put("trained_on", plain.day),
        },
    ),
}
