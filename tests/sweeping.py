"""Sweeping out what a test really committed: the guards stand aside meanwhile."""

import functools
from contextlib import contextmanager

from django.db import connection
from django.test import TransactionTestCase

SQLITE_GUARDS = "SELECT name, sql FROM sqlite_master WHERE type = 'trigger'"
POSTGRES_GUARDED = """
SELECT DISTINCT tgrelid::regclass::text FROM pg_trigger WHERE tgname LIKE 'keep%'
"""


@contextmanager
def unguarded():
    """Take the guards of every table down, and put the same ones up again."""
    with connection.cursor() as cursor:
        if connection.vendor == "postgresql":
            cursor.execute(POSTGRES_GUARDED)
            tables = [table for (table,) in cursor.fetchall()]
            # A table waiting to check its foreign keys cannot be altered.
            down = ["SET CONSTRAINTS ALL IMMEDIATE"]
            down += [f"ALTER TABLE {table} DISABLE TRIGGER USER" for table in tables]
            up = [f"ALTER TABLE {table} ENABLE TRIGGER USER" for table in tables]
        else:
            cursor.execute(SQLITE_GUARDS)
            guards = cursor.fetchall()
            down = [f'DROP TRIGGER "{name}"' for name, _ in guards]
            up = [sql for _, sql in guards]
        for statement in down:
            cursor.execute(statement)
        yield
        for statement in up:
            cursor.execute(statement)


def let_tests_sweep():
    """Django empties the tables after a test that commits; the guards would refuse."""
    sweep = TransactionTestCase._fixture_teardown

    @functools.wraps(sweep)
    def swept(self):
        with unguarded():
            sweep(self)

    TransactionTestCase._fixture_teardown = swept
