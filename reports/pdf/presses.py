"""Processes that print side by side, begun while what they print is still reckoned."""

from __future__ import annotations

import gc
import multiprocessing
import sys
from collections import deque
from collections.abc import Container, Generator, Iterable, Iterator, Mapping
from contextlib import contextmanager, suppress
from dataclasses import dataclass
from multiprocessing import forkserver
from multiprocessing.connection import Connection, wait
from multiprocessing.context import ForkServerContext, SpawnContext
from multiprocessing.process import BaseProcess
from types import TracebackType

from reports.pdf.pieces import Leaf, Piece
from reports.pdf.printing import engine, piece

# Taken up once, by the process that all others are forked from.
PRELOADED = ["weasyprint", "pikepdf"]
# Pieces from one process. What each leaves behind, some six megabytes, goes when the
# process ends; to have it swept up would take a tenth of the time of printing.
TURN = 40
# How often whoever waits is told, though no piece came: so may it be stopped. [s]
LOOK_S = 1.0
# Printed by each as soon as it is begun: the first page costs a quarter of a second.
FIRST = Leaf("<html lang=en><title>-</title><p>-", "")
Printed = tuple[str, Piece]


class PressLostError(Exception):
    """A process that printed was ended from outside, for want of memory perhaps."""


@dataclass
class Press:
    """One process, the line to it, and how many pieces it may still be given."""

    process: BaseProcess
    line: Connection
    left: int

    def take(self, one: tuple[str, Leaf]) -> None:
        self.left -= 1
        with _missed():
            self.line.send(one)

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


class Presses:
    """Some processes, ready to print; they end when this is closed.

    Where only one is asked for, it is begun when it has something to print.

    Raises
    ------
    PdfUnavailableError
        If a native library is missing.
    """

    def __init__(self, processes: int) -> None:
        self.are_many = processes > 1
        self._most = processes
        if self.are_many and _may_fork():
            forkserver.set_forkserver_preload(PRELOADED)
            forkserver.ensure_running()
        # Asked here first: where it is missing, the process to fork from cannot say so.
        engine()
        self._begun = [_started() for _ in range(processes) if self.are_many]

    def __enter__(self) -> Presses:
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        for press in self._begun:
            press.process.terminate()
            press.line.close()

    def printed(
        self, leaves: Mapping[str, Leaf]
    ) -> Generator[list[Printed], None, None]:
        """Pieces as they come; none, where none came for a while."""
        longest_first = sorted(leaves.items(), key=lambda one: -len(one[1].html))
        waiting, at_work = deque(longest_first), dict[object, Press]()
        while waiting or at_work:
            while waiting and (press := self._free(at_work)):
                press.take(waiting.popleft())
                at_work[press.line] = press
            lines = [press.line for press in at_work.values()]
            come = [at_work.pop(line) for line in wait(lines, LOOK_S)]
            told = [press.gave() for press in come]
            self._let_go([press for press in come if not press.left])
            yield told

    def _free(self, at_work: Container[object]) -> Press | None:
        """One that waits for work, begun now where there are too few."""
        for press in self._begun:
            if press.line not in at_work:
                return press
        if len(self._begun) == self._most:
            return None
        self._begun.append(_started())
        return self._begun[-1]

    def _let_go(self, over: Iterable[Press]) -> None:
        """End those that have had their turn, by the end of their line."""
        for press in over:
            press.line.close()
            self._begun.remove(press)


def _may_fork() -> bool:
    """Not where there is no forking, nor on macOS, whose fonts do not outlive it."""
    has = "forkserver" in multiprocessing.get_all_start_methods()
    return has and sys.platform != "darwin"


def _context() -> ForkServerContext | SpawnContext:
    # A fork of this process itself, which has threads, might never come back.
    if _may_fork():
        return multiprocessing.get_context("forkserver")
    return multiprocessing.get_context("spawn")


def _started() -> Press:
    context = _context()
    ours, theirs = context.Pipe()
    process = context.Process(target=_print, args=(theirs,), daemon=True)
    process.start()
    theirs.close()
    return Press(process, ours, TURN)


def _print(line: Connection) -> None:
    """Print what comes along the line, until nothing more can."""
    gc.disable()
    _piece_or_error(FIRST)
    with suppress(EOFError, OSError):
        while True:
            key, leaf = line.recv()
            line.send((key, _piece_or_error(leaf)))


def _piece_or_error(leaf: Leaf) -> Piece | Exception:
    try:
        return piece(leaf)
    except Exception as error:
        return error
