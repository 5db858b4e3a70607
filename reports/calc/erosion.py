"""Erosion: how much less soil covered ground loses, as a ratio to bare ground."""

from typing import TypeVar

import numpy as np
from numpy.typing import NDArray

COVER_SLOPE = 3.5  # per unit of cover, 0.035 a per cent, [CFACTOR]
FALL_SLOPE_M = 0.328  # 1/m, loss of shelter with drop height, [CFACTOR]
FALL_HIGHEST_M = 5.0  # m, no field canopy drips from higher, [ASSUMED]

Amount = TypeVar("Amount", float, NDArray[np.float64])


def surface_cover_factor(*, cover: Amount) -> Amount:
    """Return the soil loss under residue as a ratio to bare soil. [0–1]

    Parameters
    ----------
    cover : float or NDArray, any shape
        Soil hidden by what lies on it. [0–1]

    Returns
    -------
    float or NDArray, shaped as the cover
        Relative erosion. [unitless] 1 on bare soil, 0.03 at full cover. An index to
        compare two ways with, never tons an acre.

    Raises
    ------
    ValueError
        If a cover is missing or outside 0 to 1.

    Notes
    -----
    ``exp(-3.5 * cover)``, the surface-cover term of [CFACTOR]_ on smooth soil; its
    roughness term is left out. A fifth covered about halves the loss ([UNL-G20]_).

    Examples
    --------
    >>> f"{surface_cover_factor(cover=0.20):.4f}"
    '0.4966'
    """
    _check_cover(cover)
    loss: Amount = np.exp(-COVER_SLOPE * cover)
    return loss


def canopy_factor(*, cover: Amount, fall_height_m: float) -> Amount:
    """Return the soil loss under leaves as a ratio to open soil. [0–1]

    Parameters
    ----------
    cover : float or NDArray, any shape
        Soil under leaves. [0–1]
    fall_height_m : float
        Height drops fall from the leaves. [m] 0 to 5.

    Returns
    -------
    float or NDArray, shaped as the cover
        Relative erosion. [unitless] Multiplies :func:`surface_cover_factor`.

    Raises
    ------
    ValueError
        If an argument is outside its range.

    Notes
    -----
    ``1 - cover * exp(-0.328 * height)`` ([CFACTOR]_).

    Examples
    --------
    >>> f"{canopy_factor(cover=0.8, fall_height_m=0.5):.4f}"
    '0.3210'
    """
    _check_cover(cover)
    if not 0 <= fall_height_m <= FALL_HIGHEST_M:
        raise ValueError("fall_height_m outside 0 to 5")
    shelter = float(np.exp(-FALL_SLOPE_M * fall_height_m))
    return 1 - cover * shelter


def _check_cover(cover: float | NDArray[np.float64]) -> None:
    shares = np.asarray(cover)
    if not np.all((shares >= 0) & (shares <= 1)):
        raise ValueError("cover missing or outside 0 to 1")
