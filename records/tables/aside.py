"""A copy of the database to try things in, so that nobody has to wait for it."""

from __future__ import annotations

import contextlib
import tempfile
from collections.abc import Iterator
from pathlib import Path
from typing import Any

from django.db import DEFAULT_DB_ALIAS, connection, connections


@contextlib.contextmanager
def on_a_copy() -> Iterator[None]:
    """Let the block work on a copy that is thrown away.

    SQLite has one writer at a time, and a trial of a long table writes for long. The
    other databases keep writers of other rows going, so there it works in place, as it
    does within a transaction, whose rows a copy would not have.
    """
    if not has_copies():
        yield
        return
    with tempfile.TemporaryDirectory(prefix="trial-") as folder:
        copy = _copied(Path(folder) / "copy.sqlite3")
        own = connections[DEFAULT_DB_ALIAS]
        connections[DEFAULT_DB_ALIAS] = copy
        try:
            yield
        finally:
            connections[DEFAULT_DB_ALIAS] = own
            copy.close()


def has_copies() -> bool:
    """Whether trying and writing go on in two places."""
    return connection.vendor == "sqlite" and not connection.in_atomic_block


def _copied(path: Path) -> Any:
    """The whole database in a file of its own, through a connection of its own."""
    connection.ensure_connection()
    copy = connections.create_connection(DEFAULT_DB_ALIAS)
    copy.settings_dict = {**connection.settings_dict, "NAME": str(path)}
    copy.ensure_connection()
    # Nobody needs it after a loss of power.
    with copy.cursor() as cursor:
        cursor.execute("PRAGMA synchronous = OFF")
    connection.connection.backup(copy.connection)
    return copy
