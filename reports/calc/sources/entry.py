"""What one entry of the bibliography holds."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum


class Tier(StrEnum):
    """How near a figure stands to the people who measured or enacted it."""

    A = "A"
    """Regulation, statute, Extension text or peer-reviewed work."""
    B = "B"
    """A copy, reprint or summary of such a text."""
    C = "C"
    """A seed firm's or a garden page."""
    M = "M"
    """From memory: never shown without the word unverified."""
    COMMON = "common practice"
    """What growers do; nobody in particular to cite."""
    ASSUMED = "assumed"
    """Our own choice, open to be overruled."""
    OURS = "ours"
    """Our own arithmetic on figures that are given."""


@dataclass(frozen=True, slots=True)
class Source:
    """One place a figure or a formula was taken from.

    Attributes
    ----------
    key : str
        The short name that figures and docstrings cite.
    tier : Tier
        How near the source stands to the measurement.
    authors, title, place : str
        Who wrote what, and where it was printed or seen.
    year : int or None
        The year printed on it, if any.
    url : str
        The page that was seen; empty when there is none.
    read : bool
        Whether the figure was seen there, be it in a copy, an abstract or a citation.

    Examples
    --------
    >>> Source("X", Tier.A, "A. Author", "A title", 1997, "A journal", "", True).read
    True
    """

    key: str
    tier: Tier
    authors: str
    title: str
    year: int | None
    place: str
    url: str
    read: bool
