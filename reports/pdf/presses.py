"""Processes that print side by side, and end before they would have to be swept."""

from __future__ import annotations

import gc
import multiprocessing
import sys
from collections import deque
from collections.abc import Generator, Iterator, Mapping
from contextlib import contextmanager, suppress
from dataclasses import dataclass
from multiprocessing import forkserver
from multiprocessing.connection import Connection, wait
from multiprocessing.context import ForkServerContext, SpawnContext
from multiprocessing.process import BaseProcess

from reports.pdf.pieces import Leaf, Piece
from reports.pdf.printing import engine, piece

# Taken up once, by the process that all others are forked from.
PRELOADED = ["weasyprint", "pikepdf"]
# Pieces from one process. What each leaves behind, some six megabytes, goes when the
# process ends; to have it swept up would take a tenth of the time of printing.
TURN = 40
# How often whoever waits is told, though no piece came: so may it be stopped. [s]
LOOK_S = 1.0
Printed = tuple[str, Piece]


class PressLostError(Exception):
    """A process that printed was ended from outside, for want of memory perhaps."""


@dataclass
class Press:
    """One process, the line to it, and how many pieces it may still be given."""

    process: BaseProcess
    line: Connection
    left: int

    def took(self, waiting: deque[tuple[str, Leaf]]) -> bool:
        """Give it the next piece; where there is none for it, it may go."""
        if self.left and waiting:
            self.left -= 1
            with _missed():
                self.line.send(waiting.popleft())
            return True
        self.line.close()
        return False

    def gave(self) -> Printed:
        with _missed():
            key, told = self.line.recv()
        if isinstance(told, Exception):
            raise told
        return key, told


@contextmanager
def _missed() -> Iterator[None]:
    try:
        yield
    except (EOFError, OSError) as error:
        raise PressLostError(type(error).__name__) from error


def get_ready() -> None:
    """Begin to take up the engine, while there is other work to do.

    Raises
    ------
    PdfUnavailableError
        If a native library is missing.
    """
    if _may_fork():
        forkserver.set_forkserver_preload(PRELOADED)
        forkserver.ensure_running()
    # Asked here first: where it is missing, the process to fork from cannot say so.
    engine()


def side_by_side(
    leaves: Mapping[str, Leaf], processes: int
) -> Generator[list[Printed], None, None]:
    """Pieces as they come; none, where none came for a while."""
    get_ready()
    context = _context()
    longest_first = sorted(leaves.items(), key=lambda one: -len(one[1].html))
    waiting, at_work = deque(longest_first), dict[Connection, Press]()
    try:
        while waiting or at_work:
            while waiting and len(at_work) < processes:
                press = _started(context)
                press.took(waiting)
                at_work[press.line] = press
            come = []
            for line in wait(list(at_work), LOOK_S):
                press = at_work[line]  # type: ignore[index]
                come.append(press.gave())
                if not press.took(waiting):
                    del at_work[press.line]
            yield come
    finally:
        for press in at_work.values():
            press.process.terminate()


def _may_fork() -> bool:
    """Not where there is no forking, nor on macOS, whose fonts do not outlive it."""
    has = "forkserver" in multiprocessing.get_all_start_methods()
    return has and sys.platform != "darwin"


def _context() -> ForkServerContext | SpawnContext:
    # A fork of this process itself, which has threads, might never come back.
    if _may_fork():
        return multiprocessing.get_context("forkserver")
    return multiprocessing.get_context("spawn")


def _started(context: ForkServerContext | SpawnContext) -> Press:
    ours, theirs = context.Pipe()
    process = context.Process(target=_print, args=(theirs,), daemon=True)
    process.start()
    theirs.close()
    return Press(process, ours, TURN)


def _print(line: Connection) -> None:
    """Print what comes along the line, until nothing more can."""
    gc.disable()
    with suppress(EOFError, OSError):
        while True:
            key, leaf = line.recv()
            line.send((key, _piece_or_error(leaf)))


def _piece_or_error(leaf: Leaf) -> Piece | Exception:
    try:
        return piece(leaf)
    except Exception as error:
        return error
