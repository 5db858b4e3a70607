"""One act on several places: a form once, a form each, all saved or none."""

from __future__ import annotations

import contextlib
import datetime as dt
import uuid
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any

from django.core.exceptions import ValidationError
from django.db import transaction
from django.http import QueryDict

from farm.models import Farm, Field, Record, User
from farm.names import counting
from farm.units import UnitError, parse_rate
from records.acts.base import Act
from records.forms.seeds_once import SEEDS
from records.models import Planting


@dataclass
class Sheet:
    """One act on several places, as typed: a form once, and a form each."""

    act: Act
    farm: Farm
    once: Any
    rows: list[Any] = field(default_factory=list)

    def is_valid(self) -> bool:
        sound = [row.is_valid() for row in self.rows]
        return bool(sound) and all(sound)

    @property
    def once_fields(self) -> list[Any]:
        return [self.once[name] for name in self.act.once]

    def record(self, *, by: User, now: dt.datetime) -> list[Record] | None:
        """Write all rows down, or none: each is checked again as its turn comes."""
        written = []
        with transaction.atomic():
            for row in self.rows:
                row.full_clean()
                if not row.is_valid():
                    transaction.set_rollback(True)
                    return None
                written.append(row.record(by=by, now=now))
        return written


def sent_before(act: Act, farm: Farm, typed: QueryDict) -> bool:
    """Whether this very page was sent, and saved, already."""
    keys = []
    for name in typed:
        if name.endswith("-client_key"):
            with contextlib.suppress(ValueError):
                keys.append(uuid.UUID(str(typed[name])))
    rows = act.noun.model._default_manager
    return rows.filter(farm=farm, client_key__in=keys).exists()


def places(act: Act, farm: Farm, *, today: dt.date, words: str = "") -> list[Any]:
    """Where the act can have been done: the farm's fields, or what stands there."""
    if act.place == "field":
        rows = Field.objects.on(farm).live().filter(name__icontains=words)
        return sorted(rows.order_by("pk"), key=lambda row: counting(row.name))
    standing = Planting.objects.on(farm).live().standing(today)
    found = standing.filter(field__name__icontains=words).select_related("field")
    stands = found.prefetch_related("lines__kind").order_by("pk")
    return sorted(stands, key=lambda row: counting(row.field.name))


def sheet(
    act: Act,
    farm: Farm,
    chosen: Sequence[Any],
    *,
    today: dt.date,
    typed: QueryDict | None = None,
    initial: Mapping[str, Any] | None = None,
) -> Sheet:
    """The forms for the places chosen: blank with first guesses, or as typed."""
    options: dict[str, Any] = {"farm": farm, "today": today}
    once = act.noun.form(initial=dict(initial or {}), **options)
    if typed is not None:
        once = act.noun.form(_with_row_count(typed, act, ""), **options)
    made, names = Sheet(act, farm, once), dict[Any, str]()
    for place in chosen:
        prefix = f"at{place.pk}"
        data = None if typed is None else _row_data(act, place, prefix, typed)
        guess = dict(initial or {}) | first_row(act, place, initial or {})
        row: Any = act.noun.form(data, prefix=prefix, initial=guess, **options)
        made.rows.append(row)
        row.place, row.asked = place, [row[name] for name in act.each]
        if act.sows:
            row.seeds = [one for one in row.rows.forms if seed_said(one, names)]
    return made


def seed_said(seed: Any, names: dict[Any, str]) -> str:
    """The lot, or else the kind, of a line; looked up once for all the places."""
    for box in ("lot", "kind"):
        value = seed[box].value()
        if value and not seed.said:
            if (box, value) not in names:
                with contextlib.suppress(ValidationError):
                    names[box, value] = str(seed.fields[box].to_python(value))
            seed.said = names.get((box, value), str(value)[:60])
    return str(seed.said)


def first_row(act: Act, place: Any, told: Mapping[str, Any]) -> dict[str, Any]:
    """What can be worked out for one place: its area, and weights from rates."""
    area = place.area_m2
    guess: dict[str, Any] = {act.place: place.pk}
    if "area_m2" in act.each:
        guess["area_m2"] = area
    if act.sows:
        guess["lines"] = [
            {
                "lot": seed["lot"],
                "kind": seed["kind"],
                "share": seed["share"],
                "seed_kg": seed["rate_kg_m2"] * area if seed["rate_kg_m2"] else None,
            }
            for seed in seeds_told(told)
        ]
    return guess


def seeds_told(told: Mapping[str, Any]) -> list[dict[str, Any]]:
    """The seeds of a sowing as typed once: lot or kind, rate, and shares, equal ones
    if none is typed."""
    found = []
    for place in range(SEEDS):
        lot, kind = told.get(f"lot{place}"), told.get(f"kind{place}")
        if lot or kind:
            seed = {"lot": lot, "kind": kind, "share": told.get(f"share{place}")}
            found.append(seed | {"rate_kg_m2": rate_told(told.get(f"rate{place}"))})
    if len(found) == 1 or not any(seed["share"] for seed in found):
        found = [seed | {"share": 1 / len(found)} for seed in found]
    return found


def rate_told(typed: Any) -> float | None:
    """A rate as typed or as kept; one that cannot be read works nothing out."""
    if typed is None or typed == "":
        return None
    if isinstance(typed, float):
        return typed
    try:
        return parse_rate(str(typed), default_unit="lb/ac")
    except UnitError:
        return None


def _row_data(act: Act, place: Any, prefix: str, typed: QueryDict) -> QueryDict:
    """What one row's form is given: what was typed once, and what of this place."""
    data = _with_row_count(typed, act, prefix)
    for name in act.once:
        if name in typed:
            data[f"{prefix}-{name}"] = str(typed[name])
    data[f"{prefix}-{act.place}"] = str(place.pk)
    if act.place == "planting" and "field" in act.noun.form.base_fields:
        data[f"{prefix}-field"] = str(place.field_id)
    return data


def _with_row_count(typed: QueryDict, act: Act, prefix: str) -> QueryDict:
    data = typed.copy()
    if act.sows:
        lines = f"{prefix}-lines" if prefix else "lines"
        data[f"{lines}-TOTAL_FORMS"] = str(SEEDS)
        data[f"{lines}-INITIAL_FORMS"] = "0"
    return data
