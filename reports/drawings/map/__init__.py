"""The land of a farm from above, to scale."""

from reports.drawings.map.land import MapPlot, farm_map

__all__ = ["MapPlot", "farm_map"]
