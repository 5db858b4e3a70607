"""What is ordered of each supplier, and the boxes of the order it becomes."""

from __future__ import annotations

import datetime as dt
import uuid
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from django.utils.translation import gettext as _

from reports.calc.shapes.dressing import Packets
from reports.calc.shapes.order import Bought, Parcel, Terms
from reports.calc.shapes.seed import OfferFacts


@dataclass(frozen=True, slots=True)
class LinePart:
    """A line of a parcel with the offer behind it."""

    line: Bought
    offer: OfferFacts
    is_searched: bool
    # Pure live seed by the name of its kind. [kg]
    live: tuple[tuple[str, float], ...]
    # Pure live seed in the whole by the number of its kind. [0–1]
    contents: tuple[tuple[int, float], ...]

    @property
    def variety(self) -> str:
        """The variety; of a mix, that it is one."""
        mix = str(_("mix"))
        is_said = mix.casefold() in self.offer.variety.casefold().split()
        mixed = mix if self.offer.also and not is_said else ""
        return " ".join(filter(None, [self.offer.variety, mixed]))

    @property
    def bags(self) -> int:
        """Whole bags."""
        return round(self.line.bags)


@dataclass(frozen=True, slots=True)
class ParcelPart:
    """What is bought from one supplier, and the boxes of the order it becomes."""

    supplier: str
    parcel: Parcel
    lines: tuple[LinePart, ...]
    packets: tuple[Packets, ...]
    boxes: tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True)
class PacketsPart:
    """What goes onto the seed, from a supplier that sends no seed."""

    supplier: str
    packets: tuple[Packets, ...]
    boxes: tuple[tuple[str, str], ...]


def order_boxes(
    terms: Terms,
    *,
    on: dt.date,
    kept: str,
    lines: Sequence[LinePart] = (),
    packets: Sequence[Packets] = (),
) -> tuple[tuple[str, str], ...]:
    """The order as its entry form would send it."""
    weight_kg = sum(part.line.seed_kg for part in lines)
    freight = terms.freight_order + terms.freight_kg * weight_kg
    sent = {
        "client_key": str(uuid.uuid4()),
        "supplier": str(terms.supplier),
        "drawn_up_on": on.isoformat(),
        "overruled": kept[:600],
        "freight": f"{freight:.2f}",
        **_rows("lines", [_line(part) for part in lines]),
        **_rows("dressings", [_packets(one) for one in packets]),
        **_rows("components", list(_components(lines))),
    }
    return tuple(sent.items())


def _rows(name: str, rows: Sequence[Mapping[str, str]]) -> dict[str, str]:
    sent = {f"{name}-TOTAL_FORMS": str(len(rows)), f"{name}-INITIAL_FORMS": "0"}
    for place, row in enumerate(rows):
        sent |= {f"{name}-{place}-{box}": value for box, value in row.items()}
    return sent


def _line(part: LinePart) -> Mapping[str, str]:
    return {
        "kind": str(part.offer.kind_id),
        "variety": part.variety,
        "status": part.offer.status,
        "bag_kg": f"{part.line.price.bag_kg!r} kg",
        "bags": str(part.bags),
        "price": f"{part.line.price.each:.2f}",
        "pls_share": _percent(part.offer),
    }


def _packets(one: Packets) -> Mapping[str, str]:
    sold = one.packets is not None and one.packet_kg is not None
    return {
        "product": str(one.product_id),
        "for_seed": ", ".join(one.kind_names)[:200],
        "needed_kg": f"{one.needed_kg!r} kg",
        "packet_kg": f"{one.packet_kg!r} kg" if sold else "",
        "packets": str(one.packets) if sold else "",
        "price": "" if one.price is None else f"{one.price:.2f}",
    }


def _components(lines: Sequence[LinePart]) -> Iterator[Mapping[str, str]]:
    for number, part in enumerate(lines, start=1):
        if part.offer.also:
            for kind_id, pls in part.contents:
                yield {
                    "line": str(number),
                    "kind": str(kind_id),
                    "pls_share": f"{pls * 100:.6g}",
                }


def _percent(offer: OfferFacts) -> str:
    """Live seed of an offer of one kind; a mix has one for each."""
    return f"{offer.pls * 100:.6g}" if offer.pls and not offer.also else ""
