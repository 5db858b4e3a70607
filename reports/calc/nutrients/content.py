"""Label figures: what a product or a residue holds, and oxides as elements."""

from enum import StrEnum
from typing import TypeVar

import numpy as np
from numpy.typing import ArrayLike, NDArray

P_HELD_TO = 0.0029  # share, buckwheat frees phosphorus only above it, [ARCAND10]
P_HIGHEST = 0.02  # share of dry matter, no stand holds more, [ASSUMED]
P_PER_P2O5 = 0.4365  # kg/kg, [SPES-201]
P2O5_PER_P = 2.2910  # kg/kg, [SPES-201]
K_PER_K2O = 0.8301  # kg/kg, [SPES-201]
K2O_PER_K = 1.2051  # kg/kg, [SPES-201]

Amount = TypeVar("Amount", float, NDArray[np.float64])


class PhosphorusNote(StrEnum):
    """What to say beside the phosphorus in buckwheat."""

    UNKNOWN = "unknown"
    HELD = "held"
    MAY_BE_FREED = "may_be_freed"


def phosphorus_note(*, phosphorus_share: float | None) -> PhosphorusNote:
    """Return what to say beside the phosphorus in buckwheat residue.

    Parameters
    ----------
    phosphorus_share : float or None
        Phosphorus in the dry matter, from a laboratory. [kg/kg] 0 to 0.02.

    Returns
    -------
    PhosphorusNote
        ``HELD`` up to 0.29 %, ``UNKNOWN`` without a test. Show the content of the
        residue, never a gain to the next crop.

    Raises
    ------
    ValueError
        If the share is outside its range.

    Notes
    -----
    Buckwheat worked in green freed phosphorus only above 2.9 g/kg, and too little to
    matter ([ARCAND10]_).

    Examples
    --------
    >>> phosphorus_note(phosphorus_share=0.0025).value
    'held'
    """
    if phosphorus_share is None:
        return PhosphorusNote.UNKNOWN
    if not 0 <= phosphorus_share <= P_HIGHEST:
        raise ValueError("phosphorus_share outside 0 to 0.02; is it a percentage?")
    held = phosphorus_share <= P_HELD_TO
    return PhosphorusNote.HELD if held else PhosphorusNote.MAY_BE_FREED


def nutrient_content(*, mass_kg: Amount, share: float) -> Amount:
    """Return the nutrient in a product or a residue. [kg]

    Parameters
    ----------
    mass_kg : float or NDArray, any shape
        Product, or dry matter. [kg, or kg/m² for kg/m²] 0 or more.
    share : float
        Share printed on the label or measured. [0–1]

    Returns
    -------
    float or NDArray, shaped as the mass
        Nutrient, in the form the share is stated in. [kg]

    Raises
    ------
    ValueError
        If an argument is outside its range.

    Notes
    -----
    ``mass * share`` ([SPES-201]_).

    Examples
    --------
    >>> nutrient_content(mass_kg=60.0, share=0.30)
    18.0
    """
    _check_mass(mass_kg)
    if not 0 <= share <= 1:
        raise ValueError("share outside 0 to 1")
    return mass_kg * share


def product_for(*, nutrient_kg: Amount, share: float) -> Amount:
    """Return the product that holds a wanted amount of a nutrient. [kg]

    Parameters
    ----------
    nutrient_kg : float or NDArray, any shape
        Nutrient wanted. [kg, or kg/m² for kg/m²] 0 or more.
    share : float
        Share printed on the label. [0–1] Above 0.

    Returns
    -------
    float or NDArray, shaped as the nutrient
        Product. [kg]

    Raises
    ------
    ValueError
        If an argument is outside its range.

    Notes
    -----
    ``nutrient / share`` ([LSU-SPREAD]_, [TAMU-SPREAD]_).

    Examples
    --------
    >>> product_for(nutrient_kg=1.0, share=0.20)
    5.0
    """
    _check_mass(nutrient_kg)
    if not 0 < share <= 1:
        raise ValueError("share not above 0, or above 1")
    return nutrient_kg / share


def _check_mass(mass: ArrayLike) -> None:
    if not np.all(np.asarray(mass) >= 0):
        raise ValueError("mass missing or below 0")
