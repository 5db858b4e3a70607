"""Python's collector of cyclic garbage, held still over work that makes much."""

from __future__ import annotations

import gc
from collections.abc import Iterator
from contextlib import contextmanager


@contextmanager
def at_rest() -> Iterator[None]:
    """Keep the collector from walking again and again what is all still in use."""
    was_on = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        if was_on:
            gc.enable()


@contextmanager
def swept() -> Iterator[None]:
    """Clear away what was made inside, without a look at what was there before."""
    gc.freeze()
    try:
        with at_rest():
            yield
    finally:
        gc.collect()
        gc.unfreeze()
