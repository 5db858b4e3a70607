"""An order and what came of it, as plain values."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass
from enum import StrEnum


class Difference(StrEnum):
    """How what came differs from what was ordered."""

    NOTHING_YET = "nothing_yet"
    SHORT = "short"
    OVER = "over"
    WEAKER = "weaker"
    NOT_TESTED = "not_tested"
    OTHER_STATUS = "other_status"
    OTHER_VARIETY = "other_variety"
    NOT_ORDERED = "not_ordered"
    OTHER_KINDS = "other_kinds"
    UNSHOWN = "unshown"


@dataclass(frozen=True, slots=True)
class Content:
    """One kind in a line or a lot, with its pure live seed in the whole. [0–1]"""

    kind: str
    kind_name: str
    pls: float | None
    kind_id: int | None = None


@dataclass(frozen=True, slots=True)
class OrderedLine:
    """Bags of one kind, or of a mix with its contents, in an order. [kg, money]"""

    kind: str
    kind_id: int
    kind_name: str
    variety: str
    status: str
    bag_kg: float
    bags: int
    price: float | None
    pls: float | None
    contents: tuple[Content, ...] = ()

    @property
    def held(self) -> tuple[Content, ...]:
        """Return every kind in it."""
        alone = Content(self.kind, self.kind_name, self.pls, self.kind_id)
        return self.contents or (alone,)

    @property
    def kinds(self) -> frozenset[str]:
        """Return the kinds in it, without their order."""
        return frozenset(one.kind for one in self.held)

    @property
    def seed_kg(self) -> float:
        """Return the weight of the bags. [kg]"""
        return self.bag_kg * self.bags

    @property
    def cost(self) -> float | None:
        """Return what the bags cost, None where no price is told. [money]"""
        return None if self.price is None else self.price * self.bags


@dataclass(frozen=True, slots=True)
class OrderedPackets:
    """Inoculant or treatment in an order, for the seed of some kinds. [kg, money]"""

    product: str
    for_seed: str
    needed_kg: float
    packet_kg: float | None
    packets: int | None
    price: float | None

    @property
    def cost(self) -> float | None:
        """Return what the packets cost, None where a figure is not told. [money]"""
        if self.packets is None or self.price is None:
            return None
        return self.price * self.packets


@dataclass(frozen=True, slots=True)
class CameLot:
    """A lot that came of an order, by its tag. [kg]

    ``unshown`` tells that a kind in it is sold engineered too, and that nothing says
    the seed is none of it.
    """

    id: int
    label: str
    kind: str
    kind_name: str
    variety: str
    status: str
    received_kg: float
    pls: float | None
    contents: tuple[Content, ...] = ()
    unshown: bool = False

    @property
    def held(self) -> tuple[Content, ...]:
        """Return every kind in it."""
        return self.contents or (Content(self.kind, self.kind_name, self.pls),)

    @property
    def kinds(self) -> frozenset[str]:
        """Return the kinds in it, without their order."""
        return frozenset(one.kind for one in self.held)


@dataclass(frozen=True, slots=True)
class OrderFacts:
    """One order to one supplier, and the lots that came of it."""

    id: int
    supplier: str
    address: str
    reference: str
    drawn_up_on: dt.date
    wanted_by: dt.date | None
    sent_on: dt.date | None
    freight: float | None
    notes: str
    lines: tuple[OrderedLine, ...]
    lots: tuple[CameLot, ...]
    overruled: str = ""
    packets: tuple[OrderedPackets, ...] = ()

    @property
    def goods(self) -> float:
        """Return what the bags and packets with a price cost. [money]"""
        bags = sum(line.cost or 0.0 for line in self.lines)
        return bags + sum(one.cost or 0.0 for one in self.packets)

    @property
    def total(self) -> float:
        """Return goods and freight. [money]"""
        return self.goods + (self.freight or 0.0)


@dataclass(frozen=True, slots=True)
class TagLine:
    """One kind of a lot: live seed as offered and by the tag. [0–1]"""

    lot: CameLot
    kind_name: str
    offered: float | None
    tagged: float | None
    difference: Difference | None


@dataclass(frozen=True, slots=True)
class Receipt:
    """One kind, or one mix, of an order against what came of it. [kg]"""

    kind_name: str
    ordered_kg: float
    came_kg: float
    ordered_pls_kg: float | None
    came_pls_kg: float | None
    lots: tuple[CameLot, ...]
    differences: tuple[Difference, ...]
    tags: tuple[TagLine, ...] = ()

    @property
    def over_kg(self) -> float:
        """Return what came above the order, below nothing where it is short. [kg]"""
        return self.came_kg - self.ordered_kg
