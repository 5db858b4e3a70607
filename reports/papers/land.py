"""The land as a map: what lies where, and what the ground carries on a day."""

from __future__ import annotations

import datetime as dt
from collections import defaultdict
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from django.utils.safestring import SafeString
from django.utils.translation import gettext as _

from farm.models import Farm
from farm.templatetags.days import day_said
from farm.units import System
from reports.calc.shapes.basics import Span
from reports.calc.shapes.season import Ground, SeasonPage, Strip
from reports.drawings import MapPlot, farm_map
from reports.ledger.land import Plot, plots_of
from reports.papers.reckoned import season_page

Carried = tuple[tuple[Ground, float], ...]
# A share that rounds to nothing is not told.
LEAST = 0.005


@dataclass(frozen=True, slots=True)
class LandRow:
    """A piece of land in the table beside the map; no number where it is not on it.

    ``carried`` holds each ground with its share of the piece, the largest first; it
    is empty where the parts of the piece tell of that.
    """

    plot: Plot
    number: int | None
    carried: Carried
    has_section: bool


@dataclass(frozen=True, slots=True)
class LandPart:
    """The map, the table behind it, and the fields still without an outline."""

    on: dt.date
    drawing: SafeString
    rows: tuple[LandRow, ...]

    @property
    def missing(self) -> tuple[LandRow, ...]:
        return tuple(row for row in self.rows if row.number is None)


def map_paper(farm: Farm, *, today: dt.date) -> dict[str, Any]:
    """The land of a farm as it is on a day."""
    season = Span(*farm.season(farm.season_year(today)))
    page = season_page(farm, season, today=today)
    land = land_part(plots_of(farm), page, today=today, system=System(farm.units))
    return {"farm": farm, "land": land}


def numbered(plots: Sequence[Plot]) -> list[tuple[int, Plot]]:
    """The fields that have an outline, with the numbers they carry on a map."""
    return list(enumerate((plot for plot in plots if plot.polygons), start=1))


def plain_map(plots: Sequence[Plot], *, system: System) -> SafeString:
    """The outlines with their numbers and names; nothing where no field has one."""
    drawn = numbered(plots)
    if not drawn:
        return SafeString("")
    return farm_map(
        [
            MapPlot(
                number=number,
                name=plot.name,
                area_m2=plot.area_m2,
                polygons=plot.polygons,
                ground=None,
            )
            for number, plot in drawn
        ],
        ident="land",
        title=_("The fields by their outlines"),
        system=system,
    )


def land_part(
    plots: Sequence[Plot], page: SeasonPage, *, today: dt.date, system: System
) -> LandPart:
    """The land on the day printed, or on the season's last where that is over."""
    on = max(min(today, page.season.last), page.season.first)
    strips = {row.ledger.id: row.strip for row in page.fields}
    rows, number = [], 0
    for plot in plots:
        number += bool(plot.polygons)
        strip = strips.get(plot.id)
        rows.append(
            LandRow(
                plot=plot,
                number=number if plot.polygons else None,
                carried=carried_on(strip, on) if strip else (),
                has_section=strip is not None,
            )
        )
    drawing = farm_map(
        [_drawn(row, row.number) for row in rows if row.number],
        ident="land",
        title=_("The land on %(day)s") % {"day": day_said(on, "j F Y")},
        system=system,
    )
    return LandPart(on, drawing, tuple(rows))


def carried_on(strip: Strip, day: dt.date) -> Carried:
    """What a field carries on a day, by its share, the largest first."""
    shares: defaultdict[Ground, float] = defaultdict(float)
    for part in strip.segments:
        if part.first <= day <= part.last:
            shares[part.ground] += part.share
    order = list(Ground)
    told = [one for one in shares.items() if one[1] >= LEAST]
    return tuple(sorted(told, key=lambda one: (-one[1], order.index(one[0]))))


def _drawn(row: LandRow, number: int) -> MapPlot:
    return MapPlot(
        number=number,
        name=row.plot.name,
        area_m2=row.plot.area_m2,
        polygons=row.plot.polygons,
        ground=row.carried[0][0] if row.carried else None,
    )
