"""What is told of a printed piece, so that it can be joined to others."""

from __future__ import annotations

import hashlib
from dataclasses import dataclass
from functools import cached_property

# Changed when the same words and style would give other bytes.
EDITION = "3"


@dataclass(frozen=True, slots=True)
class Mark:
    """One bookmark: how deep, what it says, on which page of its piece."""

    level: int
    title: str
    page: int


@dataclass(frozen=True, slots=True)
class Piece:
    """Some pages; every name inside them begins with the piece's own prefix."""

    pdf: bytes
    pages: int
    marks: tuple[Mark, ...]
    prefix: str


@dataclass(frozen=True, slots=True)
class Enclosure:
    """A plain file that travels inside a paper."""

    name: str
    says: str
    type: str
    data: bytes


@dataclass(frozen=True)
class Leaf:
    """What is to be printed as one piece."""

    html: str
    css: str

    @cached_property
    def key(self) -> str:
        """Its fingerprint, by which the printed piece is kept."""
        return fingerprint(self.css, self.html)


def fingerprint(*told: bytes | str) -> str:
    """What is told in a row, as one short name."""
    digest = hashlib.sha256(EDITION.encode())
    for one in told:
        raw = one.encode() if isinstance(one, str) else one
        digest.update(b"%d:" % len(raw) + raw)
    return digest.hexdigest()
