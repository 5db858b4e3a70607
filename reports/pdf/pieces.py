"""What is told of a printed piece, so that it can be joined to others."""

from __future__ import annotations

from dataclasses import dataclass


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
