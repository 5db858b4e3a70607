"""Pieces printed before are taken as they are; the others are printed side by side."""

from __future__ import annotations

import hashlib
import multiprocessing
from collections.abc import Callable, Iterator, Sequence
from concurrent.futures import ProcessPoolExecutor, as_completed
from dataclasses import dataclass
from functools import cached_property

from django.core.cache import caches

from reports.pdf.pieces import Piece
from reports.pdf.printing import piece

# Changed when the same words and style would give other bytes.
EDITION = "1"
# Fewer pieces than this are sooner printed than a second process is started.
FEW = 3
Heard = Callable[[int, int], None]


@dataclass(frozen=True)
class Leaf:
    """What is to be printed as one piece."""

    html: str
    css: str

    @cached_property
    def key(self) -> str:
        """Its fingerprint, by which the printed piece is kept."""
        told = "\0".join((EDITION, self.css, self.html))
        return hashlib.sha256(told.encode()).hexdigest()


def unheard(done: int, total: int) -> None:
    """Nobody waits to be told how far it is."""


def pieces_of(
    leaves: Sequence[Leaf], *, processes: int = 1, heard: Heard = unheard
) -> list[Piece]:
    """Print what was not printed before; each piece is kept as soon as it is there."""
    kept = caches["pieces"]
    found: dict[str, Piece] = kept.get_many([leaf.key for leaf in leaves])
    missing = {leaf.key: leaf for leaf in leaves if leaf.key not in found}
    done = len(leaves) - len(missing)
    heard(done, len(leaves))
    for key, printed in _printed(missing, processes):
        kept.set(key, printed)
        found[key] = printed
        done += 1
        heard(done, len(leaves))
    return [found[leaf.key] for leaf in leaves]


def _printed(missing: dict[str, Leaf], processes: int) -> Iterator[tuple[str, Piece]]:
    if processes == 1 or len(missing) < FEW:
        for key, leaf in missing.items():
            yield key, piece(leaf.html, leaf.css)
        return
    # Spawned, because a fork of a process with threads may never come back.
    context = multiprocessing.get_context("spawn")
    pool = ProcessPoolExecutor(processes, mp_context=context)
    longest_first = sorted(missing.items(), key=lambda one: -len(one[1].html))
    try:
        waiting = {
            pool.submit(piece, leaf.html, leaf.css): key for key, leaf in longest_first
        }
        for future in as_completed(waiting):
            yield waiting[future], future.result()
    finally:
        pool.shutdown(cancel_futures=True)
