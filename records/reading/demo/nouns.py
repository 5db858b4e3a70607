"""Every noun of the story, and what is filled in where the story leaves it out."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from django.db.models import Sum

from farm import units
from farm.models import Field, LandStatement
from records.models import (
    Application,
    BiomassSample,
    FarmFigure,
    InputLot,
    InputProduct,
    MulchSheet,
    Observation,
    Planting,
    SampleFrame,
    SeedLine,
    SeedLot,
    Termination,
)
from records.reading.demo import plain
from records.reading.demo.book import Book
from records.reading.demo.papers import PAPERS
from records.reading.demo.plain import Told
from records.reading.demo.sheet import Parts, Sheet, find, put, same, spread
from records.reading.demo.supplies import SUPPLIES


def whole_field(row: Any, told: Told, book: Book) -> Parts:
    if row.area_m2 is None:
        row.area_m2 = row.field.area_m2
    return {}


def planting_parts(row: Planting, told: Told, book: Book) -> Parts:
    whole_field(row, told, book)
    return {"lines": [seed_line(line, book) for line in told.get("seed", ())]}


def seed_line(told: Told, book: Book) -> SeedLine:
    lot = book.lots[told["lot"]] if "lot" in told else None
    line = SeedLine(
        kind=lot.kind if lot else book.kinds[told["kind"]],
        lot=lot,
        seed_kg=units.parse_mass(told["weight"]) if "weight" in told else None,
        share=plain.share(told.get("share", "100 %")),
    )
    line.full_clean(exclude=["planting"])
    return line


def frames(row: BiomassSample, told: Told, book: Book) -> Parts:
    rows = [SampleFrame(**plain.frame(text)) for text in told.get("frames", ())]
    for frame in rows:
        frame.full_clean(exclude=["sample"])
    return {"frames": rows}


def all_that_stands(row: Termination, told: Told, book: Book) -> Parts:
    if row.area_m2 is None:
        ends = row.planting.terminations.filter(voided_at=None, outcome="ended")
        over = ends.aggregate(all=Sum("area_m2"))["all"] or 0.0
        row.area_m2 = row.planting.area_m2 - over
    return {}


NOTES = same("notes")
FIELD = {"field": find("field", "fields")}
AREA = {"area": put("area_m2", units.parse_area)}
DEPTH = {"depth": put("depth_m", units.parse_depth)}

SHEETS: Mapping[str, Sheet] = {
    **SUPPLIES,
    "fields": Sheet(
        Field,
        {
            **NOTES,
            **same("name", "kind", "status"),
            "part_of": find("parent", "fields"),
            "area": spread(plain.entered),
            "sides": spread(plain.sides),
            "outline": spread(plain.outlined),
            "drawn": spread(plain.drawn),
            "since": put("status_since", plain.day),
        },
    ),
    "land_statements": Sheet(
        LandStatement,
        {
            **NOTES,
            **FIELD,
            **same("substance", "signer"),
            "first": put("first", plain.day),
            "last": put("last", plain.day),
            "last_used": put("last_used_on", plain.day),
            "signed": put("signed_on", plain.day),
        },
        day="signed",
    ),
    "seed_lots": Sheet(
        SeedLot,
        {
            **NOTES,
            **same("variety", "supplier", "origin", "status", "certificate"),
            **same("treatment", "inoculant", "came", "non_gmo", "no_noxious"),
            "lot": put("lot_number"),
            "kind": find("kind", "kinds"),
            "received": put("received_on", plain.day),
            "weight": put("received_kg", units.parse_mass),
            "purity": put("purity_share", plain.share),
            "germination": put("germination_share", plain.share),
            "hard": put("hard_share", plain.share),
            "tested": put("tested_on", plain.day),
            "non_gmo_on": put("non_gmo_on", plain.day),
            "inoculant_until": put("inoculant_until", plain.day),
        },
        day="received",
    ),
    "products": Sheet(
        InputProduct,
        {
            **NOTES,
            **same("name", "maker", "type", "approval", "registration"),
            **same("reentry_hours", "preharvest_days", "plant_back_months"),
            **same("restricted_use"),
            "nitrogen": put("nitrogen_percent"),
            "phosphate": put("phosphate_percent"),
            "potash": put("potash_percent"),
            "approved": put("approved_on", plain.day),
            "approved_until": put("approved_until", plain.day),
        },
    ),
    "input_lots": Sheet(
        InputLot,
        {
            **NOTES,
            **same("supplier", "invoice"),
            "received": put("received_on", plain.day),
            "product": find("product", "products"),
            "lot": put("lot_number"),
            "amount": spread(plain.amount),
        },
        day="received",
    ),
    "plantings": Sheet(
        Planting,
        {
            **NOTES,
            **FIELD,
            **AREA,
            **DEPTH,
            **same("firmed", "rain_expected", "inoculated", "next_crop"),
            "for": put("purpose"),
            "how": put("method", plain.code),
            "sown": put("sown_on", plain.day),
            "planned": put("planned_on", plain.day),
            "next_crop_on": put("next_crop_on", plain.day),
            "next_crop_set": put("next_crop_set", plain.code),
        },
        day="sown",
        finish=planting_parts,
    ),
    "seen": Sheet(
        Observation,
        {
            **NOTES,
            **same("weeds"),
            "on": put("seen_on", plain.day),
            "what": put("seen", plain.code),
            "canopy": put("canopy_share", plain.share),
            "bloom": put("bloom_share", plain.share),
            "cover": put("ground_cover_share", plain.share),
            "height": put("height_m", units.parse_length),
        },
    ),
    "weighed": Sheet(
        BiomassSample,
        {
            **NOTES,
            **same("laboratory"),
            "on": put("cut_on", plain.day),
            "dry": put("dry_share", plain.share),
            "nitrogen": put("nitrogen_share", plain.share),
        },
        finish=frames,
    ),
    "ended": Sheet(
        Termination,
        {
            **NOTES,
            **AREA,
            **DEPTH,
            **same("tool", "outcome"),
            "on": put("ended_on", plain.day),
            "how": put("method", plain.code),
            "bloom": put("bloom_share", plain.share),
            "residue": put("residue", plain.code),
            "why": put("reason"),
            "worked_in": put("worked_in_on", plain.day),
            "tarp_off": put("tarp_removed_on", plain.day),
        },
        finish=all_that_stands,
    ),
    "applications": Sheet(
        Application,
        {
            **NOTES,
            **FIELD,
            **AREA,
            **same("target", "weather", "equipment"),
            "on": put("applied_on", plain.day),
            "product": find("product", "products"),
            "lot": put("product_lot"),
            "planting": find("planting", "plantings"),
            "amount": spread(plain.amount),
            "how": put("method"),
            "licence": put("applicator_licence"),
            "posted": spread(plain.posted),
            "from": put("started_at", plain.hour),
            "until": put("finished_at", plain.hour),
            "worked_in": put("worked_in_on", plain.day),
        },
        finish=whole_field,
    ),
    "films": Sheet(
        MulchSheet,
        {
            **NOTES,
            **FIELD,
            **AREA,
            **same("approval"),
            "planting": find("planting", "plantings"),
            "of": put("material", plain.code),
            "words": put("material_words"),
            "on": put("laid_on", plain.day),
            "off": put("taken_off_on", plain.day),
            "went": put("went", plain.code),
        },
        finish=whole_field,
    ),
    "own_figures": Sheet(
        FarmFigure,
        {
            **same("attribute", "low", "high", "unit", "reason"),
            "kind": find("kind", "kinds"),
        },
    ),
    **PAPERS,
}
