"""Both ways to leave a stand's residue, and which serves what matters most."""

from __future__ import annotations

import datetime as dt
from typing import Any

from farm.models import Farm
from farm.units import System
from reports.calc.season.ahead.ending import end_choice
from reports.calc.shapes.ahead import WindowKind
from reports.calc.shapes.wishes import Wish
from reports.drawings.ways import ways
from reports.papers.ahead import Ahead, ahead_of, station_told
from reports.papers.layout import choice_part

LONGEST = dt.timedelta(days=365)


def residue_paper(
    farm: Farm, pk: int, *, on: dt.date, end: str, wish: str
) -> dict[str, Any] | None:
    """Everything the page shows, None where the farm has no such stand."""
    ahead = ahead_of(farm, on)
    found = ahead.stand(pk)
    if found is None:
        return None
    field, planting = found
    day = end_asked(end, pk, ahead)
    both = end_choice(
        field,
        planting,
        on=day,
        weather=ahead.growing.sky.weather,
        today=on,
        assumptions=ahead.ledger.assumptions,
        climate=ahead.ledger.climate,
        southern=farm.is_southern,
    )
    wished = next((one for one in Wish if one.value == wish), None)
    choice = both.choice if both else None
    part = choice_part(choice, f"curve-{pk}", System(farm.units)) if choice else None
    advice = [
        row for row in (both.advice if both else ()) if wished in {None, row.wish}
    ]
    return {
        "farm": farm,
        "on": on,
        "field": field,
        "planting": planting,
        "kinds": " + ".join(line.kind.name for line in planting.lines),
        "end": day,
        "both": both,
        "choice": choice,
        "part": part,
        "ways": ways(both, ident=str(pk), system=System(farm.units)) if both else (),
        "station": station_told(ahead.growing),
        "wish": wished,
        "wishes": tuple(Wish),
        "advice": advice,
        "serving": advice[0] if wished and advice else None,
    }


def end_asked(asked: str, pk: int, ahead: Ahead) -> dt.date:
    """The day asked for; else today while its window is open, or the window's end."""
    try:
        day = dt.date.fromisoformat(asked)
    except ValueError:
        day = dt.date.min
    if ahead.today <= day <= ahead.today + LONGEST:
        return day
    outlook = ahead.outlooks.get(pk)
    window = outlook.window(WindowKind.END_MOWING) if outlook else None
    return max(ahead.today, (window and window.closes) or ahead.today)
