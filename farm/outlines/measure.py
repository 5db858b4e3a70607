"""Area of an outline on the WGS 84 ellipsoid."""

from geographiclib.geodesic import Geodesic

from farm.outlines.plane import Ring
from farm.outlines.shapes import Outline


def area_m2(outline: Outline) -> float:
    """Return the geodesic area, holes taken away, whichever way the rings run.

    Parameters
    ----------
    outline : Outline
        Polygons in longitude and latitude; each smaller than half the Earth.

    Returns
    -------
    float
        Area on the ellipsoid. [m²]

    Notes
    -----
    Karney, C. F. F. (2013). Algorithms for geodesics. Journal of Geodesy 87:43-55,
    through his geographiclib.
    """
    return sum(
        _ring_m2(outer) - sum(map(_ring_m2, holes))
        for outer, *holes in outline.polygons
    )


def _ring_m2(ring: Ring) -> float:
    polygon = Geodesic.WGS84.Polygon()
    for lon, lat in ring[:-1]:
        polygon.AddPoint(lat, lon)
    _, _, area = polygon.Compute()
    return abs(float(area))


def distance_m(here: tuple[float, float], there: tuple[float, float]) -> float:
    """Return the geodesic distance between two (latitude, longitude). [m]"""
    return float(Geodesic.WGS84.Inverse(*here, *there)["s12"])
