"""Gaps of every field, with the kinds that fit them best."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from farm.models import Farm
from reports.calc.gaps import ranked
from reports.calc.season.ahead.fitting import Fitter
from reports.calc.season.ahead.gaps import gaps_of
from reports.calc.season.ahead.objections import Farm as FarmFacts
from reports.calc.season.ahead.outlook import station_caveats
from reports.calc.season.rates import RateTable
from reports.calc.shapes.gaps import Aim, Gap, Ranked
from reports.calc.shapes.ledger import FieldLedger, KindFacts
from reports.ledger.ahead import cover_kinds, has_animals, seed_left
from reports.papers.ahead import ahead_of, station_told

BEST = 6
WHEAT = frozenset({"winter-wheat-grain", "winter-wheat"})
WHEAT_YEARS = dt.timedelta(days=730)


@dataclass(frozen=True)
class GapPart:
    """A gap with the best kinds for it, and how many more there are."""

    gap: Gap
    best: tuple[Ranked, ...]
    more: int


def gaps_paper(farm: Farm, *, on: dt.date, asked: Mapping[str, str]) -> dict[str, Any]:
    """Everything the gaps page shows; narrowed by aim and by field as asked."""
    ahead = ahead_of(farm, on)
    gaps = gaps_of(ahead.fields, ahead.outlooks, today=on)
    aim = next((one for one in Aim if one.value == asked.get("aim")), None)
    field = asked.get("field", "")
    shown = [gap for gap in gaps if not field or str(gap.field_id) == field]
    fitter = Fitter(
        ahead.growing,
        FarmFacts(
            seed_left(farm, on=on), wheat_on(ahead.fields, on), has_animals(farm)
        ),
        RateTable(ahead.growing.assumptions, southern=farm.is_southern),
    )
    kinds = cover_kinds(farm) if shown else {}
    most = None if field else BEST
    return {
        "farm": farm,
        "on": on,
        "aim": aim,
        "aims": tuple(Aim),
        "field": field,
        "parts": tuple(parts_of(shown, kinds, fitter, aim, most)),
        "chance": ahead.growing.assumptions["sow_chance"],
        "station": station_told(ahead.growing),
        "caveats": tuple(station_caveats(ahead.growing)),
        "rain_mm": ahead.growing.assumptions["rain_week_mm"],
    }


def parts_of(
    gaps: Sequence[Gap],
    kinds: Mapping[int, KindFacts],
    fitter: Fitter,
    aim: Aim | None,
    most: int | None,
) -> Iterator[GapPart]:
    for gap in gaps:
        rows = ranked(fitter.fits(gap, kinds), aim=aim)
        yield GapPart(gap, rows[:most], len(rows) - len(rows[:most]))


def wheat_on(fields: Sequence[FieldLedger], on: dt.date) -> bool:
    """Whether wheat was sown within two years, or is planned."""
    return any(
        line.kind.slug in WHEAT and row.start is not None
        for field in fields
        for row in field.plantings
        if row.start is None or row.start >= on - WHEAT_YEARS
        for line in row.lines
    )
