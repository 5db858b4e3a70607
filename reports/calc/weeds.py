"""Weeds: what a mulch still does to them, and how long the next crop waits."""

from collections.abc import Collection
from dataclasses import dataclass
from enum import IntEnum, StrEnum

import numpy as np
from numpy.typing import ArrayLike, NDArray

from reports.calc.shapes.ledger import Group, Residue

STRONG_KG_M2 = 0.8  # kg/m², dependable control of annual weeds, [MIRSKY13]
MODERATE_KG_M2 = 0.5  # kg/m², three quarters fewer weeds under grass, [NICHOLS20]
PARTIAL_COVER = 0.80  # share of soil hidden, [ASSUMED]

LOG_RATIO = -0.720649  # ln, weeds with cover over without, at 0, [NICHOLS20]
LOG_RATIO_PER_MG_HA = -0.132178  # ln per Mg/ha, [NICHOLS20]
LOG_RATIO_BROADLEAF = 0.870309  # ln, added where the cover is no grass, [NICHOLS20]
REDUCTION_FROM_KG_M2 = 0.1  # kg/m², below it the line says too much, [ASSUMED]
GRASS_TO_KG_M2 = 0.90  # kg/m², heaviest grass cover measured, [NICHOLS20]
BROADLEAF_TO_KG_M2 = 0.813  # kg/m², heaviest other cover measured, [NICHOLS20]
MG_HA_PER_KG_M2 = 10.0  # Mg/ha in 1 kg/m², exact, [CALC]

YOUNG_D = 7  # d, after buckwheat worked in, [HT2013]
MIXED_D = 14  # d, after grass worked in, between the other two, [ASSUMED]
SLOW_D = 21  # d, before fine seed or after slow residue, [COMMON]
CAREFUL_D = 7  # d, added by the careful, [ASSUMED]
SLOW_RATIO = 25.0  # C:N, above it worked-in residue holds nitrogen back, [NRCS-CN]


class Strength(IntEnum):
    """How well a dead mulch holds weeds back; more is stronger."""

    NONE = 0
    PARTIAL = 1
    MODERATE = 2
    STRONG = 3


class Evidence(StrEnum):
    """How far the trials bear out an expected reduction."""

    CLEAR = "clear"
    NOT_SIGNIFICANT = "not_significant"


class NextCrop(StrEnum):
    """How the next crop is set."""

    SMALL_SEED = "small_seed"
    LARGE_SEED = "large_seed"
    TRANSPLANT = "transplant"


@dataclass(frozen=True)
class Waits:
    """Days between working in a stand and the next crop; a farm may set its own.

    Attributes
    ----------
    young_d : int
        After buckwheat and young legumes. [d]
    mixed_d : int
        After grass, brassicas and mixes with them. [d]
    slow_d : int
        Before fine seed, or after residue poor in nitrogen. [d]
    """

    young_d: int = YOUNG_D
    mixed_d: int = MIXED_D
    slow_d: int = SLOW_D


@dataclass(frozen=True)
class Wait:
    """How long the next crop waits after the end of a stand.

    Attributes
    ----------
    low_d, high_d : int
        Shortest wait, and a week on it for the careful. [d]
    source : str
        Key of the source.
    """

    low_d: int
    high_d: int
    source: str


DEFAULT_WAITS = Waits()
YOUNG_GROUPS = frozenset({Group.LEGUME, Group.BROADLEAF})


@dataclass(frozen=True)
class Lines:
    """Where one strength of a mulch passes into the next; a farm may set its own.

    Attributes
    ----------
    strong_kg_m2, moderate_kg_m2 : float
        Dry matter left. [kg/m²]
    partial_cover : float
        Soil hidden. [0–1]
    """

    strong_kg_m2: float = STRONG_KG_M2
    moderate_kg_m2: float = MODERATE_KG_M2
    partial_cover: float = PARTIAL_COVER


DEFAULT_LINES = Lines()


def mulch_strength(
    *,
    mass_kg_m2: ArrayLike,
    cover: ArrayLike,
    buckwheat: bool,
    lines: Lines = DEFAULT_LINES,
) -> NDArray[np.int8]:
    """Return how well what is left of a mulch holds weeds back, day by day.

    Parameters
    ----------
    mass_kg_m2 : array_like, shape (n,)
        Dry matter left on the surface. [kg/m²] 0 or more.
    cover : array_like, shape (n,)
        Soil hidden by it. [0–1]
    buckwheat : bool
        Whether the mulch is buckwheat, which is never more than ``PARTIAL``.
    lines : Lines
        The farm's own lines, where it has them.

    Returns
    -------
    NDArray of int8, shape (n,)
        Values of :class:`Strength`.

    Raises
    ------
    ValueError
        If the mass is below 0, the cover outside 0 to 1, or either is missing.

    Notes
    -----
    ``STRONG`` from 8 Mg/ha ([MIRSKY13]_), ``MODERATE`` from 5 Mg/ha ([NICHOLS20]_),
    ``PARTIAL`` from 80 % cover ([ASSUMED]_). Both trials weighed the mulch at the
    kill; that it stops working once rotted below the same weight is our inference
    ([ASSUMED]_). Buckwheat gives no dependable control once dead ([CORN-HB-BEN]_).

    Examples
    --------
    >>> mulch_strength(mass_kg_m2=[0.9, 0.6], cover=[1.0, 0.9], buckwheat=False)
    array([3, 2], dtype=int8)
    """
    mass = np.asarray(mass_kg_m2, dtype=np.float64)
    hidden = np.asarray(cover, dtype=np.float64)
    if not np.all(mass >= 0):
        raise ValueError("mass missing or below 0")
    if not np.all((hidden >= 0) & (hidden <= 1)):
        raise ValueError("cover missing or outside 0 to 1")
    strength = np.where(hidden >= lines.partial_cover, Strength.PARTIAL, Strength.NONE)
    if not buckwheat:
        strength = np.where(mass >= lines.moderate_kg_m2, Strength.MODERATE, strength)
        strength = np.where(mass >= lines.strong_kg_m2, Strength.STRONG, strength)
    return strength.astype(np.int8)


def last_day_at_least(strength: ArrayLike, level: Strength) -> int | None:
    """Return the last day on which a mulch is at least so strong.

    Parameters
    ----------
    strength : array_like of int, shape (n,)
        From :func:`mulch_strength`, from the kill on.
    level : Strength
        ``MODERATE`` ends the window; ``PARTIAL`` is told apart.

    Returns
    -------
    int or None
        Index of the day. [d] None if there was never such a day. The last index
        means that the window is still open.

    Notes
    -----
    A mulch only loses mass, so its last day ends its window ([CALC]_).

    Examples
    --------
    >>> last_day_at_least([3, 2, 2, 1, 0], Strength.MODERATE)
    2
    """
    days = np.flatnonzero(np.asarray(strength) >= level)
    return int(days[-1]) if len(days) else None


def biomass_reduction(*, mass_kg_m2: float, grass: bool) -> float | None:
    """Return the share by which a cover crop is expected to cut weed biomass. [0–1]

    Parameters
    ----------
    mass_kg_m2 : float
        Dry matter of the cover at the kill. [kg/m²]
    grass : bool
        Whether the cover is a grass.

    Returns
    -------
    float or None
        Share fewer weeds by weight. [0–1] None below 0.1 kg/m², above the heaviest
        cover measured (0.90 for grass, 0.813 for others), or where the line expects
        no reduction. Say :func:`reduction_evidence` beside it.

    Raises
    ------
    ValueError
        If the mass is below 0.

    Notes
    -----
    ``ln(with / without) = -0.720649 - 0.132178 B + 0.870309 [no grass]`` with B in
    Mg/ha ([NICHOLS20]_). The lower end is ours ([ASSUMED]_): the line says 51 % for
    no grass cover at all.

    Examples
    --------
    >>> f"{biomass_reduction(mass_kg_m2=0.5, grass=True):.4f}"
    '0.7488'
    """
    if mass_kg_m2 < 0:
        raise ValueError("mass below 0")
    heaviest = GRASS_TO_KG_M2 if grass else BROADLEAF_TO_KG_M2
    if not REDUCTION_FROM_KG_M2 <= mass_kg_m2 <= heaviest:
        return None
    log_ratio = LOG_RATIO + LOG_RATIO_PER_MG_HA * MG_HA_PER_KG_M2 * mass_kg_m2
    log_ratio += 0.0 if grass else LOG_RATIO_BROADLEAF
    return float(-np.expm1(log_ratio)) if log_ratio < 0 else None


def reduction_evidence(*, grass: bool) -> Evidence:
    """Return how far trials bear out the expected reduction.

    Parameters
    ----------
    grass : bool
        Whether the cover is a grass.

    Returns
    -------
    Evidence
        ``NOT_SIGNIFICANT`` for legumes, brassicas and buckwheat.

    Notes
    -----
    Over all covers that are no grass the trials found no significant cut in weeds
    ([NICHOLS20]_).

    Examples
    --------
    >>> reduction_evidence(grass=False).value
    'not_significant'
    """
    return Evidence.CLEAR if grass else Evidence.NOT_SIGNIFICANT


def plant_back_days(
    *,
    groups: Collection[Group],
    placement: Residue,
    next_crop: NextCrop,
    carbon_nitrogen: float | None = None,
    waits: Waits = DEFAULT_WAITS,
) -> Wait | None:
    """Return how long to wait between the end of a stand and the next crop. [d]

    Parameters
    ----------
    groups : collection of Group
        Plant groups in the stand; one or more.
    placement : Residue
        Left on top or worked in; worked in, the wait counts from that day.
    next_crop : NextCrop
        Sown as small or as large seed, or set out as plants.
    carbon_nitrogen : float, optional
        C:N of the residue, where known. [kg/kg] Above 0.
    waits : Waits
        The farm's own days, where it has them.

    Returns
    -------
    Wait or None
        Shortest and careful wait, with the key of its source. None for small seed
        under a mulch left on top: it waits for the cover to fall, not for a day.

    Raises
    ------
    ValueError
        If no group is given, the ratio is not above 0, or the residue is neither on
        top nor worked in.

    Notes
    -----
    A week after working in buckwheat gave the best stand of the next sowing; sown at
    once a third came up, after two weeks weeds were ahead ([HT2013]_). Three weeks
    before fine seed, or after residue poor in nitrogen, is the common advice
    ([COMMON]_); the line between poor and rich is near [NRCS-CN]_. Grass, plants set
    out in mulch at once, and the careful week are ours ([ASSUMED]_).

    Examples
    --------
    >>> plant_back_days(
    ...     groups=[Group.BROADLEAF],
    ...     placement=Residue.WORKED_IN,
    ...     next_crop=NextCrop.TRANSPLANT,
    ... )
    Wait(low_d=7, high_d=14, source='HT2013')
    """
    if carbon_nitrogen is not None and carbon_nitrogen <= 0:
        raise ValueError("carbon_nitrogen is not above 0")
    if not groups or placement not in (Residue.ON_TOP, Residue.WORKED_IN):
        raise ValueError("no group, or no residue on the field")
    on_top, small = placement is Residue.ON_TOP, next_crop is NextCrop.SMALL_SEED
    slow = carbon_nitrogen is not None and carbon_nitrogen > SLOW_RATIO
    if on_top and small:
        return None
    if on_top and next_crop is NextCrop.TRANSPLANT:
        return _wait(0, "ASSUMED")
    if not on_top and (slow or small):
        return _wait(waits.slow_d, "COMMON")
    if not set(groups) <= YOUNG_GROUPS:
        return _wait(waits.mixed_d, "ASSUMED")
    return _wait(waits.young_d, "ASSUMED" if on_top else "HT2013")


def _wait(low_d: int, source: str) -> Wait:
    return Wait(low_d, low_d + CAREFUL_D, source)
