"""The sowing sheet of each day, and a label for every portion weighed out."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from farm.models import Farm
from reports.calc.order import drawn
from reports.calc.season.dressings import dressed, month_is_over
from reports.calc.season.needs import needs_of
from reports.calc.seed import fills
from reports.calc.shapes.dressing import Dressed
from reports.calc.shapes.ledger import Group
from reports.calc.shapes.order import Draw, Want
from reports.calc.shapes.seed import Need
from reports.forms.seed import SowingForm
from reports.forms.sown import Loaded
from reports.ledger.dressings import dressings_of
from reports.ledger.seed import LotOnHand, SeedLedger, seed_ledger
from reports.ledger.settings import Setting, latest, settings_of


@dataclass(frozen=True, slots=True)
class Portion:
    """Seed of one lot for one planting, and how it goes into the hopper."""

    lot: LotOnHand
    draw: Draw
    fills: int | None
    fill_kg: float | None

    @property
    def loaded_kg(self) -> float:
        """What is weighed out of the lot: of a mix, all of it at once."""
        return self.draw.whole_kg or self.draw.seed_kg

    @property
    def is_labelled(self) -> bool:
        """A mix is one portion, whatever kinds are in it."""
        return self.draw.whole_kg is None or self.draw.kind == self.lot.stock.kind


@dataclass(frozen=True, slots=True)
class SowingLine:
    """One kind of one planting: what to load, from which lots, at what setting."""

    need: Need
    portions: tuple[Portion, ...]
    seed_kg: float
    short_kg: float
    setting: Setting | None
    to_inoculate: bool
    dressed: tuple[Dressed, ...]
    # Lots whose inoculant is over by the sowing.
    stale: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Label:
    """What stands on a portion: of a mix also what goes onto each kind in it."""

    line: SowingLine
    portion: Portion
    # The lines of the kinds in it.
    inside: tuple[SowingLine, ...]


@dataclass(frozen=True, slots=True)
class SowingDay:
    """Everything sown on a day."""

    on: dt.date
    lines: tuple[SowingLine, ...]

    @property
    def loaded(self) -> dict[int, str]:
        """Plantings of which every kind is loaded, each with its field."""
        lacking = {one.need.planned.id for one in self.lines if not one.portions}
        rows = [one.need.planned for one in self.lines]
        return {row.id: row.field_name for row in rows if row.id not in lacking}

    @property
    def labels(self) -> Iterator[Label]:
        """A label for each portion; a mix has one, whatever kinds are in it."""
        for line in self.lines:
            for one in line.portions:
                if one.is_labelled:
                    yield Label(line, one, tuple(self._inside(line, one)))

    def _inside(self, line: SowingLine, portion: Portion) -> Iterator[SowingLine]:
        if portion.draw.whole_kg is None:
            yield line
            return
        for other in self.lines:
            lots = {one.draw.lot for one in other.portions}
            if other.need.planned == line.need.planned and portion.draw.lot in lots:
                yield other


def sowing_paper(farm: Farm, form: SowingForm, *, today: dt.date) -> dict[str, Any]:
    """What is sown day by day, as planned."""
    asked = form.cleaned_data
    ledger = seed_ledger(farm, asked["first"], asked["last"], by=today)
    needs = needs_of(
        ledger.planned,
        assumptions=ledger.assumptions,
        overage=asked["overage"],
        headlands=asked["headlands"],
        southern=farm.is_southern,
    )
    lines = tuple(_lines(farm, needs, ledger, asked["hopper_kg"]))
    days = sorted({line.need.planned.on for line in lines})
    told = tuple(
        SowingDay(day, tuple(one for one in lines if one.need.planned.on == day))
        for day in days
    )
    return {
        "farm": farm,
        "form": form,
        "printed_on": today,
        "days": told,
        "loaded": loaded_by_planting(told, ledger.kind_ids),
    }


def _lines(
    farm: Farm, needs: Sequence[Need], ledger: SeedLedger, hopper_kg: float | None
) -> Iterator[SowingLine]:
    draws, left = _drawn(needs, ledger)
    settings, dressings = settings_of(farm), dressings_of(farm)
    short = {(want.planting, want.kind): want.pls_kg for want in left}
    for need in needs:
        key = (need.planned.id, need.kind.slug)
        taken = [draw for draw in draws if (draw.planting, draw.kind) == key]
        portions = tuple(_portion(ledger.lots[d.lot], d, hopper_kg) for d in taken)
        planned = need.planned
        to_inoculate = need.kind.group is Group.LEGUME and not all(
            _is_inoculated(one.lot, need) for one in portions
        )
        weight = sum(draw.seed_kg for draw in taken)
        on = dressed(
            dressings, kind=need.kind.slug, seed_kg=weight or None, on=planned.on
        )
        yield SowingLine(
            need=need,
            portions=portions,
            seed_kg=weight,
            short_kg=short.get(key, 0.0),
            setting=latest(settings, need.kind.slug, planned.on, planned.method),
            to_inoculate=to_inoculate
            and not any(one.dressing.is_inoculant for one in on),
            dressed=tuple(
                one for one in on if to_inoculate or not one.dressing.is_inoculant
            ),
            stale=tuple(
                one.lot.label
                for one in portions
                if month_is_over(one.lot.inoculant_until, planned.on)
            ),
        )


def _drawn(
    needs: Sequence[Need], ledger: SeedLedger
) -> tuple[tuple[Draw, ...], tuple[Want, ...]]:
    wants = [
        Want(need.planned.id, need.kind.slug, need.planned.on, need.pls_kg)
        for need in needs
        if need.pls_kg
    ]
    return drawn(
        wants,
        [lot.stock for lot in ledger.lots.values()],
        loss_a_year=ledger.assumptions["seed_loss_a_year"],
        oldest_years=ledger.assumptions["seed_oldest_years"],
    )


def _portion(lot: LotOnHand, draw: Draw, hopper_kg: float | None) -> Portion:
    if not hopper_kg:
        return Portion(lot, draw, None, None)
    loaded = draw.whole_kg or draw.seed_kg
    return Portion(lot, draw, *fills(seed_kg=loaded, hopper_kg=hopper_kg))


def _is_inoculated(lot: LotOnHand, need: Need) -> bool:
    is_over = month_is_over(lot.inoculant_until, need.planned.on)
    return bool(lot.inoculant) and not is_over


def loaded_by_planting(
    days: Sequence[SowingDay], kind_ids: Mapping[str, int]
) -> dict[int, list[Loaded]]:
    """What is loaded for each planting that lacks no kind."""
    found: dict[int, list[Loaded]] = {}
    for day in days:
        for line in day.lines:
            need = line.need
            whole = sum(one.draw.pls_kg for one in line.portions)
            if need.planned.id in day.loaded:
                found.setdefault(need.planned.id, []).extend(
                    Loaded(
                        kind_ids[need.kind.slug],
                        one.draw.lot,
                        one.draw.seed_kg,
                        need.share * one.draw.pls_kg / whole,
                    )
                    for one in line.portions
                )
    return found
