"""The order of kinds in a gap, and what puts each before the next."""

from __future__ import annotations

from collections.abc import Iterable

from reports.calc.shapes.gaps import Against, Aim, Fit, RankBy, Ranked

WEIGHTY = frozenset(
    {
        Against.FAMILY_BEFORE,
        Against.FAMILY_AFTER,
        Against.WHEAT_NEAR,
        Against.ANIMALS,
    }
)
TENTHS = 10  # chances are compared by whole tenths: finer is not known, [ASSUMED]
Key = tuple[bool, int, int, int, int, str]


def ranked(fits: Iterable[Fit], *, aim: Aim | None = None) -> tuple[Ranked, ...]:
    """Return the kinds in order, the best first.

    Parameters
    ----------
    fits : iterable of Fit
        Kinds in one gap.
    aim : Aim, optional
        Only kinds good for it.

    Returns
    -------
    tuple of Ranked
        First those that fit in time; then those with fewer weighty reasons against;
        then by the chance to cover in tenths, by days of weeds held back, by seed on
        hand, by name.

    Notes
    -----
    Each is asked only where those before it are alike, so that one word says why a
    kind stands where it does ([ASSUMED]_).

    Examples
    --------
    >>> ranked([])
    ()
    """
    wanted = [fit for fit in fits if aim is None or aim in fit.aims]
    rows = sorted(wanted, key=_key)
    keys = [_key(row) for row in rows]
    by = [_differs(one, other) for one, other in zip(keys, keys[1:], strict=False)]
    return tuple(
        Ranked(fit, reason) for fit, reason in zip(rows, [*by, None], strict=False)
    )


def _key(fit: Fit) -> Key:
    seed = 0 if fit.seed.enough else 1 if fit.seed.on_hand_kg > 0 else 2
    return (
        fit.sow_from is None,
        len(WEIGHTY & set(fit.against)),
        -int((fit.chance_cover or 0.0) * TENTHS + 1e-9),
        -int(fit.weed_days or 0.0),
        seed,
        fit.name,
    )


def _differs(one: Key, other: Key) -> RankBy:
    for by, left, right in zip(RankBy, one, other, strict=True):
        if left != right:
            return by
    return RankBy.NAME
