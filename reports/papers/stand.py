"""One stand's page: its stages, its windows and each date explained."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Any

from farm.models import Farm
from reports.calc.season.ahead.weeks import rain_read, share_rain
from reports.calc.shapes.ahead import Outlook, Window, WindowState
from reports.calc.shapes.ledger import PlantingFacts
from reports.calc.windows import state_of
from reports.drawings.spread import spread_plot
from reports.ledger.ahead import DutyTold, open_duties
from reports.papers.ahead import Ahead, ahead_of, station_told
from reports.papers.dues import Offer, duty_of, offer_of, people_on

RAIN_DAYS = 7


def stand_paper(farm: Farm, pk: int, *, on: dt.date) -> dict[str, Any] | None:
    """Everything a stand's page shows, None where the farm has no such stand."""
    ahead = ahead_of(farm, on)
    found = ahead.stand(pk)
    outlook = ahead.outlooks.get(pk)
    if found is None or outlook is None:
        return None
    field, planting = found
    duties = open_duties(farm, on=on)
    return {
        "farm": farm,
        "on": on,
        "field": field,
        "planting": planting,
        "kinds": " + ".join(line.kind.name for line in planting.lines),
        "outlook": outlook,
        "windows": list(windows_told(outlook, duties, on=on)),
        "people": people_on(farm, on),
        "station": station_told(ahead.growing),
        "drawing": spread_plot(outlook, today=on, ident=f"spread-{pk}"),
        "cautions": sorted({c for line in planting.lines for c in line.kind.cautions}),
        "rain": rain_of(planting, ahead),
    }


@dataclass(frozen=True)
class WindowTold:
    """A window as it stands, with its duty or the offer of one."""

    window: Window
    state: WindowState
    offer: Offer | None
    duty: DutyTold | None


def windows_told(
    outlook: Outlook, duties: Sequence[DutyTold], *, on: dt.date
) -> Iterator[WindowTold]:
    for window in outlook.windows:
        state = state_of(window.opens, window.closes, today=on)
        offer = offer_of(window, on=on)
        duty = duty_of(outlook.planting_id, offer, duties)
        over = state is WindowState.OVER
        yield WindowTold(window, state, None if over else offer, duty)


def rain_of(planting: PlantingFacts, ahead: Ahead) -> dict[str, Any]:
    """The chance of rain in the week after sowing, and what really came."""
    start, choices = planting.start, ahead.growing.assumptions
    if start is None:
        return {}
    sky = ahead.growing.sky
    least = choices["rain_week_mm"]
    share = float(share_rain(sky, [start], least_mm=least, over_days=RAIN_DAYS)[0])
    return {
        "least_mm": least,
        "chance": None if share != share else share,
        "came_mm": rain_read(sky, start, RAIN_DAYS) if planting.sown_on else None,
        "waits": planting.method.value == "broadcast",
    }
