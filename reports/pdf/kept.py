"""Pieces printed before are taken as they are; the others are printed side by side."""

from __future__ import annotations

from collections.abc import Callable, Generator, Sequence
from contextlib import closing

from django.core.cache import caches

from reports.collector import swept
from reports.pdf.pieces import Leaf, Piece
from reports.pdf.presses import Presses, Printed
from reports.pdf.printing import piece

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
    leaves: Sequence[Leaf], *, presses: Presses | None = None, heard: Heard = unheard
) -> list[Piece]:
    """Print what was not printed before; each piece is kept as soon as it is there."""
    kept = caches["pieces"]
    found: dict[str, Piece] = kept.get_many([leaf.key for leaf in leaves])
    missing = {leaf.key: leaf for leaf in leaves if leaf.key not in found}
    done = len(leaves) - len(missing)
    heard(done, len(leaves))
    with closing(_printed(missing, presses)) as coming:
        for come in coming:
            for key, printed in come:
                kept.set(key, printed)
                found[key] = printed
            done += len(come)
            heard(done, len(leaves))
    return [found[leaf.key] for leaf in leaves]


def _printed(
    missing: dict[str, Leaf], presses: Presses | None
) -> Generator[list[Printed], None, None]:
    """Pieces as they come; none, where none came for a while."""
    if presses and presses.are_many and len(missing) > 1:
        yield from presses.printed(missing)
        return
    for key, leaf in missing.items():
        with swept():
            printed = piece(leaf)
        yield [(key, printed)]
