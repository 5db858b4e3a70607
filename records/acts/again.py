"""The last time: what a person wrote down, ready to be done again."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from typing import Any
from urllib.parse import urlencode

from farm.models import Farm, Record, User
from farm.unit_words import measure_said
from farm.units import KG_M2_PER_KG_HA, System, write_rate
from records.acts.base import Act
from records.forms.seeds_once import PARTS, SEEDS
from records.models import Planting


@dataclass(frozen=True)
class Again:
    """The last time a person did this: what to say of it, and how to repeat it."""

    act: Act
    words: str
    query: str


def again(act: Act, farm: Farm, user: User) -> Again | None:
    """The last rows saved together, ready to be done again elsewhere or on."""
    rows = act.noun.rows().filter(farm=farm, written_by=user, voided_at=None)
    last: Any = rows.order_by("-written_at", "-pk").first()
    if last is None:
        return None
    batch = list(rows.filter(written_at=last.written_at).order_by("pk"))
    kept = last_values(act, farm, user)
    query = {name: kept[name] for name in kept if name[:-1] in {"lot", "kind"}}
    query |= {name: _rate_text(kept[name]) for name in kept if name[:-1] == "rate"}
    query |= {n: f"{kept[n] * 100:.6g}" for n in kept if n[:-1] == "share"}
    query |= {"go": "1", "place": [getattr(row, f"{act.place}_id") for row in batch]}
    query = {name: value for name, value in query.items() if value is not None}
    return Again(act, ", ".join(map(str, batch[:4])), urlencode(query, doseq=True))


def last_values(act: Act, farm: Farm, user: User) -> dict[str, Any]:
    """What the same person wrote down the last time they did this."""
    model = act.noun.model
    last: Any = (
        model._default_manager.filter(farm=farm, written_by=user, voided_at=None)
        .order_by("-written_at", "-pk")
        .first()
    )
    if last is None:
        return {}
    kept = {name: _value(last, name) for name in act.once if hasattr(last, name)}
    if act.sows:
        for place, line in enumerate(last.lines.order_by("pk")[:SEEDS]):
            kept |= {f"lot{place}": line.lot_id, f"kind{place}": line.kind_id}
            kept[f"share{place}"] = line.share
            if line.seed_kg:
                rate = line.seed_kg / last.area_m2
                kept[f"rate{place}"] = rate
    return kept


def rates(written: Sequence[Record], farm: Farm) -> list[str]:
    """The rate each weight came to on its area, worked out for the writer."""
    system = System(farm.units)
    return [
        f"{row.field}: {line.kind} "
        + measure_said(write_rate(line.seed_kg / row.area_m2, system))
        for row in written
        if isinstance(row, Planting)
        for line in row.lines.select_related("kind")
        if line.seed_kg
    ]


def _value(row: Any, name: str) -> Any:
    value = getattr(row, name)
    return value.pk if hasattr(value, "pk") else value


def _rate_text(rate_kg_m2: float) -> str:
    return f"{rate_kg_m2 / KG_M2_PER_KG_HA:.6g} kg/ha"


def seeds_query(lines: Iterable[Mapping[str, Any]], *, farm: Farm) -> dict[str, Any]:
    """The seeds of a sowing for the address of its form; boxes beyond them are
    emptied, so that nothing of the last sowing is left in them."""
    told = dict.fromkeys(f"{part}{n}" for n in range(SEEDS) for part in PARTS)
    for n, line in enumerate(lines):
        told[f"lot{n}"] = line["lot_id"]
        told[f"kind{n}"] = line["kind_id"]
        told[f"share{n}"] = f"{line['share'] * 100:.6g}"
        rate = line["rate_kg_m2"]
        if rate:
            told[f"rate{n}"] = measure_said(write_rate(rate, System(farm.units)))
    return {name: "" if value is None else value for name, value in told.items()}
