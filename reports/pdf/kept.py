"""Pieces printed before are taken as they are; the others are printed side by side."""

from __future__ import annotations

import hashlib
import multiprocessing
import os
import threading
from collections.abc import Callable, Generator, Sequence
from concurrent.futures import FIRST_COMPLETED, ProcessPoolExecutor, wait
from contextlib import closing
from dataclasses import dataclass
from functools import cached_property

from django.core.cache import caches

from reports.pdf.pieces import Piece
from reports.pdf.printing import piece

# Changed when the same words and style would give other bytes.
EDITION = "2"
# Shorter pages than these together are sooner printed than processes are started.
# [characters]
FEW = 150_000
# How often whoever waits is told, though no piece came: so may it be stopped. [s]
LOOK_S = 1.0
Heard = Callable[[int, int], None]
Printed = tuple[str, Piece]


@dataclass(frozen=True)
class Leaf:
    """What is to be printed as one piece."""

    html: str
    css: str

    @cached_property
    def key(self) -> str:
        """Its fingerprint, by which the printed piece is kept."""
        return fingerprint(self.css, self.html)


def unheard(done: int, total: int) -> None:
    """Nobody waits to be told how far it is."""


def fingerprint(*told: bytes | str) -> str:
    """What is told in a row, as one short name."""
    digest = hashlib.sha256(EDITION.encode())
    for one in told:
        raw = one.encode() if isinstance(one, str) else one
        digest.update(b"%d:" % len(raw) + raw)
    return digest.hexdigest()


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
    long = sum(len(leaf.html) for leaf in missing.values()) >= FEW
    if processes == 1 or len(missing) == 1 or not long:
        for key, leaf in missing.items():
            yield [(key, piece(leaf.html, leaf.css))]
        return
    longest_first = sorted(missing.items(), key=lambda one: -len(one[1].html))
    # Spawned, because a fork of a process with threads may never come back.
    context = multiprocessing.get_context("spawn")
    with ProcessPoolExecutor(processes, context, initializer=_follow) as pool:
        keys = {
            pool.submit(piece, leaf.html, leaf.css): key for key, leaf in longest_first
        }
        pending = set(keys)
        try:
            while pending:
                over, pending = wait(pending, LOOK_S, FIRST_COMPLETED)
                yield [(keys[future], future.result()) for future in over]
        except BaseException:
            _leave(pool)
            raise


def _leave(pool: ProcessPoolExecutor) -> None:
    """Wait for no piece that nobody wants any more."""
    pool.shutdown(wait=False, cancel_futures=True)
    for child in multiprocessing.active_children():
        child.terminate()


def _follow() -> None:
    """End with the process that waits for the pieces, even where that was killed."""
    parent = multiprocessing.parent_process()
    if parent is not None:
        threading.Thread(target=_watch, args=(parent,), daemon=True).start()


def _watch(parent: multiprocessing.process.BaseProcess) -> None:
    parent.join()
    os._exit(1)
