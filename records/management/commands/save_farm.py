"""Save a whole farm into one file."""

from __future__ import annotations

import os
from pathlib import Path
from typing import Any

from django.core.management.base import BaseCommand, CommandError, CommandParser
from django.utils import timezone

from farm.models import Farm
from records.tables.archive import save_farm


class Command(BaseCommand):
    help = "Save a whole farm, with its history and its papers, into one zip file."

    def add_arguments(self, parser: CommandParser) -> None:
        parser.add_argument("farm", help="Short name of the farm, as in its addresses.")
        parser.add_argument(
            "-o",
            "--output",
            type=Path,
            required=True,
            help="The file, such as farm.zip.",
        )

    def handle(self, *args: Any, farm: str, output: Path, **options: Any) -> None:
        found = Farm.objects.filter(slug=farm).first()
        if found is None:
            raise CommandError(f"No farm has the short name “{farm}”.")
        if output.exists():
            raise CommandError(f"{output} is there already and is left as it is.")
        unfinished = output.with_name(f"{output.name}.unfinished")
        try:
            # Records hold people's names: the file is for this account alone.
            number = os.open(unfinished, os.O_RDWR | os.O_CREAT | os.O_TRUNC, 0o600)
            with os.fdopen(number, "w+b") as target:
                saved = save_farm(found, target, now=timezone.now())
            unfinished.replace(output)
        except OSError as error:
            raise CommandError(f"{output} cannot be written: {error}") from error
        finally:
            unfinished.unlink(missing_ok=True)
        for name in saved.lost:
            self.stderr.write(f"The file of a paper is gone: {name}")
        self.stdout.write(f"{saved.rows} rows and {saved.files} papers in {output}.")
