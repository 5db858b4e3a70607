"""One field's page: its seasons as strips, its rotation, and all that happened."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from typing import Any

from django.utils.safestring import SafeString
from django.utils.translation import gettext as _

from farm.models import Farm
from reports.calc.shapes.basics import Span
from reports.calc.shapes.ledger import PlantingFacts
from reports.calc.shapes.season import FieldSeason
from reports.drawings import Stretch, StripRow, season_strip, stretches
from reports.ledger import SeasonLedger
from reports.ledger.field import FieldHistory, field_history
from reports.papers.reckoned import reckoned
from reports.papers.rotation import over, rotation_row

# Where no season is asked for, this many are drawn; each takes a tenth of a second.
MOST_STRIPS = 10


@dataclass(frozen=True, slots=True)
class StripPart:
    """One season of the field, drawn, with the days behind it."""

    year: int
    row: FieldSeason
    drawing: SafeString
    stretches: tuple[Stretch, ...]


def field_paper(
    farm: Farm, pk: int, *, asked: str, today: dt.date
) -> dict[str, Any] | None:
    """Everything a field's page shows; ``asked`` is a season's year, or nothing."""
    history = field_history(farm, pk)
    if history is None:
        return None
    plantings = history.ledger.fields[0].plantings
    years = _years(farm, history, today)
    year = int(asked) if asked in {str(one) for one in years} else None
    shown = {year} if year is not None else set(years)
    rotation = [rotation_row(farm, one) for one in plantings if one.start]
    drawn = sorted(shown & _grown(farm, plantings, today), reverse=True)
    return {
        "farm": farm,
        "field": history.facts,
        "years": years,
        "year": year,
        "strips": tuple(_strips(farm, history.ledger, drawn[:MOST_STRIPS], today)),
        "not_drawn": len(drawn[MOST_STRIPS:]),
        "rotation": [row for row in rotation if row.year in shown],
        "happenings": [
            one
            for one in history.happenings
            if year is None or (one.on and farm.season_year(one.on) == year)
        ],
    }


def _years(farm: Farm, history: FieldHistory, today: dt.date) -> list[int]:
    """Seasons with anything written down, the latest first."""
    days = [one.on for one in history.happenings if one.on is not None]
    found = {farm.season_year(day) for day in days}
    found |= _grown(farm, history.ledger.fields[0].plantings, today)
    return sorted(found, reverse=True)


def _grown(farm: Farm, plantings: Sequence[PlantingFacts], today: dt.date) -> set[int]:
    """Seasons in which a planting stood, from its first day to its last so far."""
    found: set[int] = set()
    for one in plantings:
        if one.start is not None:
            last = max(one.start, over(one) or today) if one.sown_on else one.start
            span = range(farm.season_year(one.start), farm.season_year(last) + 1)
            found |= set(span)
    return found


def _strips(
    farm: Farm, ledger: SeasonLedger, years: Sequence[int], today: dt.date
) -> Iterator[StripPart]:
    for place, year in enumerate(years, start=1):
        season = Span(*farm.season(year))
        (row,) = reckoned(_up_to(ledger, season), season, today=today).fields
        drawing = season_strip(
            [StripRow(row.ledger.name, row.strip)],
            season,
            ident=f"season-{year}",
            title=_("Season %(year)d of %(field)s")
            % {"year": year, "field": row.ledger.name},
            legend=place == 1,
        )
        yield StripPart(year, row, drawing, stretches(row.strip, season))


def _up_to(ledger: SeasonLedger, season: Span) -> SeasonLedger:
    """The ledger as a season saw it: what came after left out."""
    (field,) = ledger.fields
    known = [one for one in field.plantings if one.start and one.start <= season.last]
    return replace(ledger, fields=(replace(field, plantings=tuple(known)),))
