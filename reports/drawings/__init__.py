"""Pictures of a season, the same on a page and on paper."""

from reports.drawings.curve import mass_curve
from reports.drawings.map import MapPlot, farm_map
from reports.drawings.strip import StripRow, season_strip
from reports.drawings.table import Stretch, stretches

__all__ = [
    "MapPlot",
    "Stretch",
    "StripRow",
    "farm_map",
    "mass_curve",
    "season_strip",
    "stretches",
]
