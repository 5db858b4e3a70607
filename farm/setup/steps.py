"""Progress, one line a step: what is being done, then how it ended."""

import sys
from collections.abc import Iterator
from contextlib import contextmanager
from typing import Protocol

STEPS_TO_SERVE = 9
STEPS_TO_TEST = 4


class Writable(Protocol):
    """Anything a line can be written to."""

    def write(self, text: str, /) -> object:
        """Take the text."""

    def flush(self) -> object:
        """Show it now."""


class Steps:
    """Numbered lines such as "3/9 Packages … unchanged"."""

    def __init__(
        self, total: int, *, done: int = 0, out: Writable | None = None
    ) -> None:
        self.total, self.number = total, done
        self.out = out or sys.stdout

    @contextmanager
    def step(self, title: str) -> Iterator[list[str]]:
        """Open a line; what is put into the list closes it, else "ok"."""
        self.number += 1
        self.write(f"{self.number}/{self.total} {title} … ")
        ending: list[str] = []
        try:
            yield ending
        except BaseException:
            self.write("stopped\n")
            raise
        self.write(f"{' '.join(ending) or 'ok'}\n")

    def write(self, text: str) -> None:
        """Write at once, also when the output is a pipe."""
        self.out.write(text)
        self.out.flush()
