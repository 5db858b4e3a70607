"""What goes onto seed before sowing, and how much of it."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Dressing:
    """An inoculant or treatment for one kind, by the dose on its label.

    ``dose`` is product for a weight of seed [kg/kg]. ``until`` lies in the month to
    the end of which it is good. ``packet_kg`` is what it is sold in [kg], at
    ``packet_price`` [money].
    """

    id: int
    kind: str
    kind_name: str
    product: str
    dose: float
    lot: str
    until: dt.date | None
    is_inoculant: bool
    approval: str
    approved_until: dt.date | None = None
    product_id: int = 0
    supplier: int | None = None
    packet_kg: float | None = None
    packet_price: float | None = None


@dataclass(frozen=True, slots=True)
class Dressed:
    """A dressing for an amount of seed [kg], and whether its month is over by then."""

    dressing: Dressing
    seed_kg: float
    amount_kg: float
    is_past: bool
    is_approved: bool = True


@dataclass(frozen=True, slots=True)
class Packets:
    """A product to be bought for all of its seed, in whole packets.

    ``had_kg`` is ordered already and taken off [kg]; ``packets`` is None where the
    weight of a packet is not known.
    """

    product_id: int
    product: str
    kind_names: tuple[str, ...]
    supplier: int | None
    needed_kg: float
    had_kg: float
    packet_kg: float | None
    packets: int | None
    price: float | None

    @property
    def cost(self) -> float | None:
        """Return what the packets cost, None where a figure is not known. [money]"""
        if self.packets is None or self.price is None:
            return None
        return self.packets * self.price
