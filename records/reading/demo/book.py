"""What the story has written down so far, to be found again by name."""

from __future__ import annotations

from dataclasses import dataclass, field

from farm.models import Farm, Field, Record, User
from records.models import (
    Equipment,
    HarvestLot,
    InputProduct,
    Kind,
    Planting,
    SeedLot,
    Supplier,
)
from records.reading.demo.plain import Told


@dataclass
class Book:
    farm: Farm
    people: dict[str, User]
    kinds: dict[str, Kind]
    fields: dict[str, Field] = field(default_factory=dict)
    lots: dict[str, SeedLot] = field(default_factory=dict)
    products: dict[str, InputProduct] = field(default_factory=dict)
    plantings: dict[str, Planting] = field(default_factory=dict)
    suppliers: dict[str, Supplier] = field(default_factory=dict)
    machines: dict[str, Equipment] = field(default_factory=dict)
    crops: dict[str, HarvestLot] = field(default_factory=dict)

    def keep(self, record: Record, told: Told) -> None:
        match record:
            case Field():
                self.fields[told["name"]] = record
            case SeedLot():
                self.lots[told["lot"]] = record
            case InputProduct():
                self.products[told["name"]] = record
            case Planting():
                # Two of one day on one field: the one told first goes by that name.
                self.plantings.setdefault(f"{told['field']}, {record.sown_on}", record)
            case Supplier():
                self.suppliers[told["name"]] = record
            case Equipment():
                self.machines[told["name"]] = record
            case HarvestLot():
                self.crops[told["code"]] = record
