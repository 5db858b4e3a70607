"""The seed trade of the story: suppliers, machines, settings and what is offered."""

from __future__ import annotations

from collections.abc import Mapping

from farm import units
from records.forms.by_weight import DoseField
from records.forms.money import MoneyByWeightField
from records.models import (
    Calibration,
    Equipment,
    OfferComponent,
    OfferPrice,
    SeedDressing,
    SeedOffer,
    Supplier,
)
from records.reading.demo import plain
from records.reading.demo.book import Book
from records.reading.demo.plain import Told
from records.reading.demo.sheet import Parts, Sheet, find, put, same


def by_weight(text: str) -> float:
    return MoneyByWeightField.read(text, default_unit="lb")


def price(text: str) -> OfferPrice:
    """Tell a price by "50 lb from 10: 41.50"."""
    bag, money = text.split(": ")
    weight, _from, bags = bag.partition(" from ")
    return OfferPrice(
        bag_kg=units.parse_mass(weight), from_bags=int(bags or 1), price=float(money)
    )


def component(text: str, book: Book) -> OfferComponent:
    """Tell a part of a mix by "oats: 38 %, 92 %", its pure seed and germination."""
    kind, shares = text.split(": ")
    pure, live = (plain.share(one) for one in shares.split(", "))
    return OfferComponent(
        kind=book.kinds[kind], pure_share=pure, germination_share=live
    )


def offer_parts(row: SeedOffer, told: Told, book: Book) -> Parts:
    rows = [price(text) for text in told["prices"]]
    mixed = [component(text, book) for text in told.get("mix", ())]
    for one in (*rows, *mixed):
        one.full_clean(exclude=["offer"])
    if mixed:
        pure = sum(one.pure_share for one in mixed)
        row.purity_share = pure
        row.germination_share = sum(one.pls_share or 0.0 for one in mixed) / pure
    return {"prices": rows, "components": mixed}


def dose(text: str) -> float:
    return DoseField.read(text, default_unit="")


def rate(text: str) -> float:
    return units.parse_rate(text, default_unit="lb/ac")


NOTES = same("notes")
SUPPLIES: Mapping[str, Sheet] = {
    "suppliers": Sheet(
        Supplier,
        {
            **NOTES,
            **same("name", "part", "address", "certificate", "verified_how"),
            **same("freight", "least_order"),
            "certificate_until": put("certificate_until", plain.day),
            "verified": put("verified_on", plain.day),
            "freight_by_weight": put("freight_by_weight", by_weight),
        },
    ),
    "machines": Sheet(
        Equipment,
        {
            **NOTES,
            **same("name", "part", "rows"),
            "width": put("width_m", units.parse_length),
            "row_width": put("row_width_m", units.parse_length),
        },
    ),
    "calibrations": Sheet(
        Calibration,
        {
            **NOTES,
            **same("setting", "rows"),
            "machine": find("equipment", "machines"),
            "kind": find("kind", "kinds"),
            "on": put("calibrated_on", plain.day),
            "caught": put("caught_kg", units.parse_mass),
            "distance": put("distance_m", units.parse_length),
            "row_width": put("row_width_m", units.parse_length),
            "area": put("area_m2", units.parse_area),
            "wanted": put("wanted_kg_m2", rate),
        },
    ),
    "offers": Sheet(
        SeedOffer,
        {
            **NOTES,
            **same("variety", "status", "treatment"),
            "supplier": find("supplier", "suppliers"),
            "kind": find("kind", "kinds"),
            "on": put("offered_on", plain.day),
            "purity": put("purity_share", plain.share),
            "germination": put("germination_share", plain.share),
            "hard": put("hard_share", plain.share),
            "tested": put("tested_on", plain.day),
            "stock": put("stock_kg", units.parse_mass),
        },
        finish=offer_parts,
    ),
    "dressings": Sheet(
        SeedDressing,
        {
            **NOTES,
            "kind": find("kind", "kinds"),
            "product": find("product", "products"),
            "dose": put("dose_share", dose),
            "lot": put("product_lot"),
            "good_until": put("good_until", plain.day),
            "from": find("supplier", "suppliers"),
            "packet": put("packet_kg", units.parse_mass),
            "packet_price": put("packet_price"),
        },
    ),
}
