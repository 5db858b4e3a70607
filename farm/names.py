"""Names as typed, without the marks that make one look like another."""

from __future__ import annotations

import re

# Unicode's controls of direction and its blanks without width (UAX 9, UTS 39).
DECEIVING = re.compile(
    "[\u00ad\u061c\u180e\u200b\u200e\u200f\u202a-\u202e"
    "\u2060-\u2064\u2066-\u206f\ufeff]"
)
# Joiners belong to emoji and several scripts, but say nothing after a Latin letter.
JOINERS = re.compile(r"(^|(?<=[\x00-\u024f]))[\u200c\u200d]+|[\u200c\u200d]+$")


def honest(text: str) -> str:
    """Strip what cannot be seen and could deceive; everything else stays as typed."""
    return JOINERS.sub("", DECEIVING.sub("", text)).strip()


def counting(name: str) -> tuple[tuple[int, int, str], ...]:
    """By what names are put in order as one counts: Bed 2 comes before Bed 10."""
    parts = re.split(r"([0-9]+)", name.casefold())
    return tuple(
        (0, int(part), "") if part.isdecimal() else (1, 0, part)
        for part in parts
        if part
    )
