"""What is printed of the parts: those in which nothing is recorded, in one list."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from django.utils.translation import gettext as _

from reports.labels.packet import SECTIONS
from reports.papers.packet.tables import Section

# Said in full even where there is none.
ALWAYS = frozenset({"findings", "land", "attestation"})
# What a season did: where all these are empty, no figure was reckoned.
DONE = frozenset(
    {
        "plantings",
        "endings",
        "films",
        "inputs",
        "compost",
        "pests",
        "grazing",
        "cleaning",
        "harvest",
        "balances",
    }
)
BEHIND_FIGURES = frozenset({"assumptions", "sources"})


def printed_sections(sections: Sequence[Section]) -> list[Section]:
    """The parts with something in them, and a list of the others before the end."""
    empty = [one for one in sections if one.is_empty and one.key not in ALWAYS]
    if len(empty) < 2 or len(empty) == len(sections):
        return list(sections)
    titles = tuple(one.title for one in empty)
    none = Section("none", _("Parts without entries"), titles=titles, weight=3)
    spared = {one.key for one in empty} | _spared(sections, empty)
    kept = [one for one in sections if one.key not in spared]
    return list(_with(kept, none))


def _spared(sections: Sequence[Section], empty: Sequence[Section]) -> frozenset[str]:
    """Assumptions and sources of a season in which nothing was done."""
    is_whole = len(sections) == len(SECTIONS)
    is_bare = DONE.issubset(one.key for one in empty)
    return BEHIND_FIGURES if is_whole and is_bare else frozenset()


def _with(kept: Sequence[Section], none: Section) -> Iterable[Section]:
    """The list of the empty parts before whatever a signature stands under."""
    keys = list(SECTIONS)
    after = keys[keys.index("attestation") :]
    at = next((n for n, one in enumerate(kept) if one.key in after), len(kept))
    return (*kept[:at], none, *kept[at:])
