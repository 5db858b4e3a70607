"""Setting a drill or a spreader by catching what it drops on known ground."""

from __future__ import annotations


def caught_rate(
    *, caught_kg: float, row_spacing_m: float, distance_m: float, rows: int = 1
) -> float:
    """Return the rate a drill sows at, from a catch. [kg/m²]

    Parameters
    ----------
    caught_kg : float
        Seed caught. [kg] 0 or more.
    row_spacing_m : float
        Between rows. [m] Above 0.
    distance_m : float
        Driven, or turned by hand at the wheel. [m] Above 0.
    rows : int
        Rows caught. 1 or more.

    Returns
    -------
    float
        Bulk rate. [kg/m²]

    Raises
    ------
    ValueError
        If an argument is outside its range.

    Notes
    -----
    ``caught / (spacing * rows * distance)`` ([SEFP-DRILL]_).

    Examples
    --------
    >>> round(
    ...     caught_rate(caught_kg=0.106, row_spacing_m=0.19, distance_m=50.0, rows=2), 5
    ... )
    0.00558
    """
    if caught_kg < 0 or row_spacing_m <= 0 or distance_m <= 0 or rows < 1:
        raise ValueError("caught_kg, row_spacing_m, distance_m or rows out of range")
    return caught_kg / (row_spacing_m * distance_m * rows)


def spread_rate(*, spread_kg: float, area_m2: float) -> float:
    """Return the rate a spreader sows at, from what a known area took. [kg/m²]

    Parameters
    ----------
    spread_kg : float
        What was put on. [kg] 0 or more.
    area_m2 : float
        The area. [m²] Above 0.

    Returns
    -------
    float
        Bulk rate. [kg/m²]

    Raises
    ------
    ValueError
        If an argument is outside its range.

    Notes
    -----
    ``weight / area`` ([LSU-SPREAD]_, [TAMU-SPREAD]_).

    Examples
    --------
    >>> spread_rate(spread_kg=2.0, area_m2=400.0)
    0.005
    """
    if spread_kg < 0 or area_m2 <= 0:
        raise ValueError("spread_kg below 0, or area_m2 not above 0")
    return spread_kg / area_m2


def run_for(*, area_m2: float, width_m: float) -> float:
    """Return how far to drive to cover an area. [m]

    Parameters
    ----------
    area_m2 : float
        Ground to cover. [m²] Above 0.
    width_m : float
        Width covered, rows times spacing for a drill. [m] Above 0.

    Returns
    -------
    float
        Distance. [m]

    Raises
    ------
    ValueError
        If an argument is not above 0.

    Notes
    -----
    ``area / width`` ([SEFP-DRILL]_).

    Examples
    --------
    >>> run_for(area_m2=200.0, width_m=4.0)
    50.0
    """
    if area_m2 <= 0 or width_m <= 0:
        raise ValueError("area_m2 or width_m not above 0")
    return area_m2 / width_m


def row_in_area(*, area_m2: float, row_spacing_m: float) -> float:
    """Return the length of row that lies on an area. [m]

    Parameters
    ----------
    area_m2 : float
        Ground. [m²] Above 0.
    row_spacing_m : float
        Between rows. [m] Above 0.

    Returns
    -------
    float
        Length of row. [m]

    Raises
    ------
    ValueError
        If an argument is not above 0.

    Notes
    -----
    ``area / spacing``, for counting seedlings along the row ([UKY-SEEDS]_).

    Examples
    --------
    >>> row_in_area(area_m2=1.0, row_spacing_m=0.2)
    5.0
    """
    if area_m2 <= 0 or row_spacing_m <= 0:
        raise ValueError("area_m2 or row_spacing_m not above 0")
    return area_m2 / row_spacing_m
