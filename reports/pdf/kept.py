"""Pieces printed before are taken as they are; the others are printed side by side."""

from __future__ import annotations

from collections.abc import Callable, Generator, Sequence
from contextlib import closing

from django.core.cache import caches

from reports.collector import swept
from reports.pdf.pieces import Leaf, Piece
from reports.pdf.presses import Printed, side_by_side
from reports.pdf.printing import piece

# Shorter pages than these together are sooner printed than processes are started.
# [characters]
FEW = 60_000
Heard = Callable[[int, int], None]


def unheard(done: int, total: int) -> None:
    """Nobody waits to be told how far it is."""


def whole_of(name: str, key: str, join: Callable[[], bytes]) -> bytes:
    """The joined file of that name, taken as it is where its key is the same."""
    kept = caches["pieces"]
    found: tuple[str, bytes] = kept.get(name, ("", b""))
    if found[0] != key:
        found = key, join()
        kept.set(name, found)
    return found[1]


def pieces_of(
    leaves: Sequence[Leaf], *, processes: int = 1, heard: Heard = unheard
) -> list[Piece]:
    """Print what was not printed before; each piece is kept as soon as it is there."""
    kept = caches["pieces"]
    found: dict[str, Piece] = kept.get_many([leaf.key for leaf in leaves])
    missing = {leaf.key: leaf for leaf in leaves if leaf.key not in found}
    done = len(leaves) - len(missing)
    heard(done, len(leaves))
    with closing(_printed(missing, processes)) as coming:
        for come in coming:
            for key, printed in come:
                kept.set(key, printed)
                found[key] = printed
            done += len(come)
            heard(done, len(leaves))
    return [found[leaf.key] for leaf in leaves]


def _printed(
    missing: dict[str, Leaf], processes: int
) -> Generator[list[Printed], None, None]:
    """Pieces as they come; none, where none came for a while."""
    if processes > 1 and len(missing) > 1 and _long(missing):
        yield from side_by_side(missing, processes)
        return
    for key, leaf in missing.items():
        with swept():
            printed = piece(leaf)
        yield [(key, printed)]


def _long(missing: dict[str, Leaf]) -> bool:
    return sum(len(leaf.html) for leaf in missing.values()) >= FEW
