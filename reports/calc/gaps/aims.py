"""What a kind is good for, by its group and its figures."""

from __future__ import annotations

from reports.calc.shapes.gaps import Aim
from reports.calc.shapes.ledger import Group, KindFacts

WEED_DAYS = 14  # d, weeds held back so long count as an aim met, [ASSUMED]
DEEP_ROOT_M = 0.75  # m, roots that loosen the soil, [ASSUMED]
TAPROOTED = frozenset({"forage-radish", "turnip"})  # [COMMON]
HARMFUL = frozenset(
    {"fagopyrism", "vetch_toxicosis", "poison_seed", "crotalaria_seed"}
)  # cautions that rule a kind out as feed, [ASSUMED]


def aims_of(kind: KindFacts, *, weed_days: float | None) -> tuple[Aim, ...]:
    """Return what a kind is good for where it holds weeds back for some days.

    Parameters
    ----------
    kind : KindFacts
        The kind.
    weed_days : float or None
        Days of closed canopy it would have. [d] None where not known.

    Returns
    -------
    tuple of Aim
        In the order of the list.

    Notes
    -----
    Legumes bring nitrogen, grasses and brassicas catch nutrients, grasses make
    lasting mulch, what is no grass feeds bees when it flowers ([COMMON]_).

    Examples
    --------
    >>> kind = KindFacts("field-pea", "Field pea", "", "", Group.LEGUME, {})
    >>> [aim.value for aim in aims_of(kind, weed_days=20)]
    ['weeds', 'nitrogen', 'bees', 'forage']
    """
    grass = kind.group is Group.GRASS
    met = {
        Aim.WEEDS: weed_days is not None and weed_days >= WEED_DAYS,
        Aim.NITROGEN: kind.group is Group.LEGUME,
        Aim.CATCHING: grass or kind.group is Group.BRASSICA,
        Aim.LOOSENING: kind.slug in TAPROOTED or _deep(kind),
        Aim.BEES: not grass,
        Aim.FORAGE: kind.group is not Group.BROADLEAF
        and not HARMFUL & set(kind.cautions),
        Aim.MULCH: grass,
    }
    return tuple(aim for aim in Aim if met[aim])


def _deep(kind: KindFacts) -> bool:
    row = kind.best("root_depth")
    return row is not None and not row.unverified and row.high >= DEEP_ROOT_M
