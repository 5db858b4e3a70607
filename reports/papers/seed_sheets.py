"""The sowing sheet of each day, and a label for every portion weighed out."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Any

from farm.models import Farm
from reports.calc.order import drawn
from reports.calc.season.needs import needs_of
from reports.calc.seed import fills
from reports.calc.shapes.ledger import Group
from reports.calc.shapes.order import Draw, Want
from reports.calc.shapes.seed import Need
from reports.forms.seed import SowingForm
from reports.ledger.seed import LotOnHand, SeedLedger, seed_ledger
from reports.ledger.settings import Setting, latest, settings_of


@dataclass(frozen=True, slots=True)
class Portion:
    """Seed of one lot for one planting, and how it goes into the hopper."""

    lot: LotOnHand
    draw: Draw
    fills: int | None
    fill_kg: float | None


@dataclass(frozen=True, slots=True)
class SowingLine:
    """One kind of one planting: what to load, from which lots, at what setting."""

    need: Need
    portions: tuple[Portion, ...]
    seed_kg: float
    short_kg: float
    setting: Setting | None
    to_inoculate: bool


@dataclass(frozen=True, slots=True)
class SowingDay:
    """Everything sown on a day."""

    on: dt.date
    lines: tuple[SowingLine, ...]


def sowing_paper(farm: Farm, form: SowingForm, *, today: dt.date) -> dict[str, Any]:
    """What is sown day by day, as planned."""
    asked = form.cleaned_data
    ledger = seed_ledger(farm, asked["first"], asked["last"], by=today)
    needs = needs_of(
        ledger.planned,
        assumptions=ledger.assumptions,
        overage=asked["overage"],
        headlands=asked["headlands"],
    )
    lines = tuple(_lines(farm, needs, ledger, asked["hopper_kg"]))
    days = sorted({line.need.planned.on for line in lines})
    return {
        "farm": farm,
        "form": form,
        "printed_on": today,
        "days": tuple(
            SowingDay(day, tuple(one for one in lines if one.need.planned.on == day))
            for day in days
        ),
    }


def _lines(
    farm: Farm, needs: Sequence[Need], ledger: SeedLedger, hopper_kg: float | None
) -> Iterator[SowingLine]:
    wants = [
        Want(need.planned.id, need.kind.slug, need.planned.on, need.pls_kg)
        for need in needs
        if need.pls_kg
    ]
    draws, left = drawn(
        wants,
        [lot.stock for lot in ledger.lots.values()],
        loss_a_year=ledger.assumptions["seed_loss_a_year"],
        oldest_years=ledger.assumptions["seed_oldest_years"],
    )
    settings = settings_of(farm)
    short = {(want.planting, want.kind): want.pls_kg for want in left}
    for need in needs:
        key = (need.planned.id, need.kind.slug)
        taken = [draw for draw in draws if (draw.planting, draw.kind) == key]
        portions = tuple(_portion(ledger.lots[d.lot], d, hopper_kg) for d in taken)
        yield SowingLine(
            need=need,
            portions=portions,
            seed_kg=sum(draw.seed_kg for draw in taken),
            short_kg=short.get(key, 0.0),
            setting=latest(settings, need.kind.slug, need.planned.on),
            to_inoculate=need.kind.group is Group.LEGUME
            and not all(_is_inoculated(one.lot, need) for one in portions),
        )


def _portion(lot: LotOnHand, draw: Draw, hopper_kg: float | None) -> Portion:
    if not hopper_kg:
        return Portion(lot, draw, None, None)
    return Portion(lot, draw, *fills(seed_kg=draw.seed_kg, hopper_kg=hopper_kg))


def _is_inoculated(lot: LotOnHand, need: Need) -> bool:
    until = lot.inoculant_until
    return bool(lot.inoculant) and (until is None or until >= need.planned.on)
