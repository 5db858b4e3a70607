"""What stands in the story as text, as values of the tables."""

from __future__ import annotations

import datetime as dt
import json
from collections.abc import Mapping
from typing import Any

from farm import outlines, units
from farm.units import Trouble, UnitError

Told = Mapping[str, Any]


def share(text: str) -> float:
    """Return 0.85 for "85 %"."""
    return float(text.removesuffix("%")) / 100


def code(text: str) -> str:
    """Return the code a table keeps for a choice in plain words."""
    return text.replace(" ", "_")


def day(text: str) -> dt.date:
    return dt.date.fromisoformat(text)


def hour(text: str) -> dt.time:
    return dt.time.fromisoformat(text)


def sides(text: str) -> dict[str, Any]:
    """Tell a piece of land by "100 x 4 ft"."""
    length, width = text.split(" x ")
    unit = width.split()[-1]
    return {
        "length_m": units.parse_length(length, default_unit=unit),
        "width_m": units.parse_length(width),
        "area_m2": units.parse_area(text),
        "measured": "sides",
    }


def entered(text: str) -> dict[str, Any]:
    return {"area_m2": units.parse_area(text), "measured": "entered"}


def outlined(ring: list[list[float]]) -> dict[str, Any]:
    """Tell a piece of land by its corners, longitude first."""
    polygon = {"type": "Polygon", "coordinates": [ring]}
    outline = outlines.read_outline(json.dumps(polygon))
    return {
        "outline": outline.as_geojson(),
        "area_m2": outlines.area_m2(outline),
        "measured": "outline",
    }


def drawn(ring: list[list[float]]) -> dict[str, Any]:
    """Draw a piece of land whose area is known otherwise."""
    polygon = {"type": "Polygon", "coordinates": [ring]}
    return {"outline": outlines.read_outline(json.dumps(polygon)).as_geojson()}


def posted(text: str) -> dict[str, Any]:
    """Tell when a treatment was posted by "2018-08-14 18:30"."""
    on, at = text.split()
    return {"posted_on": day(on), "posted_time": hour(at)}


def amount(text: str) -> dict[str, Any]:
    """Tell an amount put on, a weight or a volume."""
    try:
        return {"measure": "mass", "amount_si": units.parse_mass(text)}
    except UnitError as error:
        if error.reason is not Trouble.UNKNOWN_UNIT:
            raise
    return {"measure": "volume", "amount_si": units.parse_volume(text)}


def frame(text: str) -> dict[str, float]:
    """Tell a frame by "2 x 2 ft: 1.7 lb"."""
    area, weight = text.split(": ")
    return {"area_m2": units.parse_area(area), "wet_kg": units.parse_mass(weight)}
