"""Biomass: dry matter of a stand from frames cut and weighed."""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

FRAMES_ENOUGH = 4  # frames, fewer say little of a field, [COMMON]


@dataclass(frozen=True)
class Biomass:
    """Dry matter of a stand and how well it is known.

    Attributes
    ----------
    mean_kg_m2 : float
        All dry matter over all area cut. [kg/m²]
    se_kg_m2 : float or None
        Standard error over the frames. [kg/m²] None for one frame.
    frames : int
        Frames cut.
    enough : bool
        Whether four frames or more were cut.
    """

    mean_kg_m2: float
    se_kg_m2: float | None
    frames: int
    enough: bool


def dry_share(*, wet_kg: float, dry_kg: float) -> float:
    """Return the share of dry matter in a part dried to constant weight. [0–1]

    Parameters
    ----------
    wet_kg, dry_kg : float
        The part before and after drying. [kg] Dry above 0, at most wet.

    Returns
    -------
    float
        Dry matter. [0–1] Above 0.

    Raises
    ------
    ValueError
        If a weight is outside its range.

    Notes
    -----
    ``dry / wet`` ([NCSU-BIO]_), of a part of about 0.5 kg ([COMMON]_).

    Examples
    --------
    >>> dry_share(wet_kg=0.50, dry_kg=0.09)
    0.18
    """
    if not 0 < dry_kg <= wet_kg:
        raise ValueError("dry_kg not above 0, or above wet_kg")
    return dry_kg / wet_kg


def stand_biomass(
    *, wet_kg: Sequence[float], area_m2: Sequence[float], dry_share: float
) -> Biomass:
    """Return the dry matter of a stand from its frames. [kg/m²]

    Parameters
    ----------
    wet_kg : sequence of float, length n
        Fresh weight cut from each frame. [kg] 0 or more.
    area_m2 : sequence of float, length n
        Area of each frame; its width a whole number of rows. [m²] Above 0.
    dry_share : float
        From :func:`dry_share`; 1 if the frames were weighed dry. [0–1] Above 0.

    Returns
    -------
    Biomass
        Mean, standard error and number of frames.

    Raises
    ------
    ValueError
        If there is no frame, the two differ in length or a figure is outside its
        range.

    Notes
    -----
    ``sum(wet) * dry share / sum(area)`` ([NCSU-BIO]_). The standard error is that of
    the frames' own masses, ``sd / sqrt(n)`` ([CALC]_); it knows nothing of the error
    in the dry share.

    Examples
    --------
    >>> stand_biomass(wet_kg=[1.0, 1.5], area_m2=[0.5, 0.5], dry_share=0.5)
    Biomass(mean_kg_m2=1.25, se_kg_m2=0.25, frames=2, enough=False)
    """
    wet = np.asarray(wet_kg, dtype=np.float64)
    area = np.asarray(area_m2, dtype=np.float64)
    if not wet.size or wet.shape != area.shape:
        raise ValueError("no frame, or weights and areas differ in length")
    if not (np.all(wet >= 0) and np.all(area > 0)):
        raise ValueError("a weight below 0 or an area not above 0")
    if not 0 < dry_share <= 1:
        raise ValueError("dry_share not above 0, or above 1")
    each = wet * dry_share / area
    error = float(np.std(each, ddof=1) / np.sqrt(len(each))) if len(each) > 1 else None
    return Biomass(
        mean_kg_m2=float(wet.sum() * dry_share / area.sum()),
        se_kg_m2=error,
        frames=len(each),
        enough=len(each) >= FRAMES_ENOUGH,
    )
