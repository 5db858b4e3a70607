"""Triggers by which the database itself keeps rows from being deleted or rewritten.

A migration that makes a table of records, or alters one, ends with
``GuardRecords(["planting"])``: SQLite makes an altered table anew and drops its
triggers with the old one.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Any, ClassVar

from django.db.migrations.operations.base import Operation

VOIDED = "Records are voided with a reason, never deleted."
ONLY_ADDED = "Changes are only ever added, never rewritten or deleted."

POSTGRES_REFUSAL = """
CREATE OR REPLACE FUNCTION keep_row() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
    RAISE EXCEPTION USING MESSAGE = TG_ARGV[0], ERRCODE = 'restrict_violation';
END $$
"""


class GuardRecords(Operation):
    """Refuse to delete any row of these models' tables."""

    reversible = True
    reduces_to_sql = True
    refused: ClassVar[tuple[str, ...]] = ("delete",)
    message: ClassVar[str] = VOIDED

    def __init__(self, models: Sequence[str]) -> None:
        self.models = list(models)

    def state_forwards(self, app_label: str, state: Any) -> None:
        """Tables are as they were; only what they refuse is new."""

    def database_forwards(
        self, app_label: str, schema_editor: Any, from_state: Any, to_state: Any
    ) -> None:
        self.database_backwards(app_label, schema_editor, to_state, from_state)
        if schema_editor.connection.vendor == "postgresql":
            schema_editor.execute(POSTGRES_REFUSAL, params=None)
        for table in self._tables(app_label, to_state):
            for statement in self._triggers(table, schema_editor):
                schema_editor.execute(statement, params=None)

    def database_backwards(
        self, app_label: str, schema_editor: Any, from_state: Any, to_state: Any
    ) -> None:
        quote = schema_editor.quote_name
        postgres = schema_editor.connection.vendor == "postgresql"
        for table in self._tables(app_label, from_state):
            for event in self._events(schema_editor):
                on = f" ON {quote(table)}" if postgres else ""
                name = quote(trigger_name(table, event))
                schema_editor.execute(f"DROP TRIGGER IF EXISTS {name}{on}", params=None)

    def describe(self) -> str:
        return f"Guard the rows of {', '.join(self.models)}"

    def _tables(self, app_label: str, state: Any) -> list[str]:
        return [
            state.apps.get_model(app_label, name)._meta.db_table for name in self.models
        ]

    def _events(self, schema_editor: Any) -> tuple[str, ...]:
        # SQLite has no way to empty a table but by deleting its rows.
        if schema_editor.connection.vendor == "postgresql":
            return (*self.refused, "truncate")
        return self.refused

    def _triggers(self, table: str, schema_editor: Any) -> Iterator[str]:
        quote = schema_editor.quote_name
        for event in self._events(schema_editor):
            begin = (
                f"CREATE TRIGGER {quote(trigger_name(table, event))} "
                f"BEFORE {event.upper()} ON {quote(table)} "
            )
            if schema_editor.connection.vendor == "postgresql":
                each = "STATEMENT" if event == "truncate" else "ROW"
                call = f"EXECUTE FUNCTION keep_row('{self.message}')"
                yield f"{begin} FOR EACH {each} {call}"
            else:
                yield f"{begin} BEGIN SELECT RAISE(ABORT, '{self.message}'); END"


class GuardChanges(GuardRecords):
    """Refuse to delete or rewrite any row of these models' tables."""

    refused = ("update", "delete")
    message = ONLY_ADDED


def trigger_name(table: str, event: str) -> str:
    return f"keep_{table}_{event}"


def guarded(connection: Any) -> set[str]:
    """The names of the guards that stand in a database."""
    if connection.vendor == "postgresql":
        sql = "SELECT tgname FROM pg_trigger WHERE tgenabled = 'O'"
    else:
        sql = "SELECT name FROM sqlite_master WHERE type = 'trigger'"
    with connection.cursor() as cursor:
        cursor.execute(sql, [])
        return {name for (name,) in cursor.fetchall()}
