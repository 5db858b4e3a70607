"""Load the demonstration farm, for looking around."""

from typing import Any

from django.conf import settings
from django.core.management.base import BaseCommand, CommandError, CommandParser

from farm.models import Farm, User
from records import catalogue
from records.reading import demo

FIXTURES = settings.BASE_DIR / "fixtures"
# The three years first, then what was written on after them.
LAYERS = ("demo_farm.json", "demo_papers.json", "demo_seed.json")
FAULTS = "demo_faults.json"


class Command(BaseCommand):
    help = "Load a made-up farm with three years of records."

    def add_arguments(self, parser: CommandParser) -> None:
        parser.add_argument("--owner", required=True, help="e-mail of its owner")
        parser.add_argument(
            "--with-faults",
            action="store_true",
            help="with faults made on purpose, one for each thing a check can find",
        )

    def handle(self, *args: Any, owner: str, **options: Any) -> None:
        layers = (*LAYERS, FAULTS) if options["with_faults"] else LAYERS
        story = demo.layered(*(demo.read(FIXTURES / layer) for layer in layers))
        name, slug = story["farm"]["name"], story["farm"]["slug"]
        user = User.objects.filter(email=owner.strip().lower()).first()
        if user is None:
            raise CommandError(f"Nobody here signs in as {owner}.")
        if Farm.objects.filter(slug=slug).exists():
            raise CommandError(f"{name} is here already; nothing was changed.")
        if catalogue.is_stale(FIXTURES / "crops.json"):
            catalogue.load(FIXTURES / "crops.json")
        weather = FIXTURES / "weather" / story["station"]["file"]
        farm = demo.load(story, owner=user, weather=weather)
        if options["verbosity"]:
            self.stdout.write(f"{farm} is loaded; {user} owns it.")
