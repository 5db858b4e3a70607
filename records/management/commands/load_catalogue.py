"""Bring the catalogue of kinds in step with fixtures/crops.json."""

from typing import Any

from django.conf import settings
from django.core.management.base import BaseCommand

from records import catalogue


class Command(BaseCommand):
    help = "Load the catalogue of kinds; nothing is done where it is already loaded."

    def handle(self, *args: Any, **options: Any) -> None:
        path = settings.BASE_DIR / "fixtures" / "crops.json"
        if not catalogue.is_stale(path):
            self.stdout.write("The catalogue of kinds is up to date.")
            return
        count = catalogue.load(path)
        self.stdout.write(f"{count} kinds loaded.")
