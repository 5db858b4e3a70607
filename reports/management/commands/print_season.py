"""Print a farm's season report to a file."""

from __future__ import annotations

import datetime as dt
from argparse import ArgumentParser
from pathlib import Path
from typing import Any

from django.conf import settings
from django.core.management.base import BaseCommand, CommandError
from django.utils import timezone
from django.utils.translation import override

from farm.models import Farm
from reports.papers.season import season_paper
from reports.pdf import PdfUnavailableError, print_paper


class Command(BaseCommand):
    help = "Print the season report of a farm as a PDF file."

    def add_arguments(self, parser: ArgumentParser) -> None:
        parser.add_argument("farm", help="the farm's short name in addresses")
        parser.add_argument("year", type=int, help="the year the season begins in")
        parser.add_argument("-o", "--output", type=Path, required=True)
        parser.add_argument(
            "--language",
            choices=list(dict(settings.LANGUAGES)),
            default=settings.LANGUAGE_CODE,
            help="what the report is written in",
        )
        parser.add_argument(
            "--today",
            type=dt.date.fromisoformat,
            help="the day to count up to (YYYY-MM-DD), if not the farm's today",
        )

    def handle(self, *args: Any, **options: Any) -> None:
        farm = Farm.objects.filter(slug=options["farm"]).first()
        if farm is None:
            raise CommandError(f"There is no farm called {options['farm']}.")
        if not 1900 <= options["year"] < 2100:
            raise CommandError("The year must lie between 1900 and 2099.")
        today = options["today"] or farm.today(timezone.now())
        try:
            with override(options["language"]):
                paper = season_paper(farm, options["year"], today=today)
                printed = print_paper("season_print", paper)
            options["output"].write_bytes(printed)
        except PdfUnavailableError as error:
            raise CommandError(
                f"Text cannot be drawn here. Run: {error.remedy}"
            ) from error
        except OSError as error:
            raise CommandError(f"The file could not be written: {error}") from error
        self.stdout.write(f"{options['output']}: {len(printed)} bytes")
