"""Restore a whole farm from its file."""

from __future__ import annotations

import secrets
from pathlib import Path
from typing import Any

from django.core.management.base import BaseCommand, CommandError, CommandParser
from django.db import transaction
from django.utils import timezone

from farm.models import User
from records.tables.archive import ArchiveError, Restored, restore_farm


class Command(BaseCommand):
    help = "Restore a whole farm from a file that save_farm made: all of it or nothing."

    def add_arguments(self, parser: CommandParser) -> None:
        parser.add_argument("file", type=Path, help="The file, such as farm.zip.")
        parser.add_argument(
            "--owner", required=True, help="E-mail address of the farm's owner here."
        )
        parser.add_argument(
            "--altered",
            action="store_true",
            help="Restore records even where they say something else than their "
            "history; the history itself must be whole.",
        )

    def handle(self, *args: Any, file: Path, owner: str, **options: Any) -> None:
        try:
            with file.open("rb") as source, transaction.atomic():
                today = timezone.localdate()
                restored = restore_farm(
                    source, owner=owner, today=today, altered=options["altered"]
                )
                person = User.objects.get_by_natural_key(owner)
                password = _let_sign_in(person)
        except OSError as error:
            raise CommandError(f"{file} cannot be read: {error}") from error
        except ArchiveError as error:
            raise CommandError(str(error)) from error
        self._tell(restored)
        if password:
            self.stdout.write(
                f"Sign in as {person.email} with the password {password}\n"
                "It is shown only this once; change it after signing in."
            )

    def _tell(self, restored: Restored) -> None:
        farm = restored.farm
        self.stdout.write(f"{farm} is restored: {restored.rows} rows.")
        if restored.is_resealed:
            self.stdout.write(
                "Its records have other numbers here, so the history was checked and "
                "sealed anew. Keep the file: it holds the first seals."
            )
        for name in restored.lost:
            self.stderr.write(f"The file of a paper was gone already: {name}")


def _let_sign_in(person: User) -> str:
    """A password shown once, for someone who has none."""
    if person.has_usable_password():
        return ""
    password = secrets.token_urlsafe(12)
    person.set_password(password)
    person.save(update_fields=["password"])
    return password
