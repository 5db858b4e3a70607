"""The second half of `manage.py start`: tables, files, first owner, server."""

import hashlib
import os
import secrets
import sys
from argparse import ArgumentParser
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from django.conf import settings
from django.contrib.staticfiles.finders import get_finders
from django.core.exceptions import ValidationError
from django.core.management import call_command
from django.core.management.base import BaseCommand
from django.db import OperationalError, connection
from django.db.migrations.executor import MigrationExecutor

from farm.models import Farm, User
from farm.setup import listen, options, place, serving
from farm.setup.errors import SetupError
from farm.setup.steps import STEPS_TO_SERVE, STEPS_TO_TEST, Steps

# No vowels, which make words, and nothing that is mistaken for something else.
LETTERS = "bcdfghjkmnpqrstvwxz23456789"
REFUSALS = ("unable to open", "readonly", "disk", "locked", "not a database")
ASK = "No farm is recorded here yet. Load a made-up farm to look around? [y/N] "


class Command(BaseCommand):
    help = "Set this checkout up, if need be, and serve it."
    requires_system_checks: list[str] = []

    def add_arguments(self, parser: ArgumentParser) -> None:
        options.add_arguments(parser)

    def handle(
        self,
        *args: object,
        host: str,
        port: int,
        demo: bool | None,
        owner: str | None,
        check: bool,
        **rest: object,
    ) -> None:
        # Records hold people's names: what is written is for this account alone.
        if os.name == "posix":
            os.umask(place.PRIVATE)
        steps = Steps(STEPS_TO_SERVE, done=STEPS_TO_TEST)
        with plainly():
            prepare(steps, owner, demo)
        if check:
            steps.write("Everything is set up.\n")
            return
        listen.require_free(host, port)
        public = settings.ORIGIN.geturl() if settings.ORIGIN else ""
        address = public or listen.url(host, port)
        steps.write(f"\nOpen {address} in a browser. Ctrl-C ends the program.\n")
        connection.close()
        serving.serve(host, port, place.CHECKOUT)


def prepare(steps: Steps, email: str | None, demo: bool | None) -> None:
    with steps.step("Tables of the database") as ending:
        ending.append(migrate())
    with steps.step("Files for the pages") as ending:
        ending.append(collect())
    with steps.step("Catalogue of crops"):
        call_command("load_catalogue", verbosity=0)
    with steps.step("Owner") as ending:
        owner, told = first_owner(email)
        ending.append(told)
    wanted = wants_demo(demo)
    with steps.step("Demo farm") as ending:
        if wanted:
            call_command("load_demo", owner=owner.email, verbosity=0)
        ending.append("loaded" if wanted else "left out")


@contextmanager
def plainly() -> Iterator[None]:
    """Say what the database or the disk refused without a listing of code."""
    try:
        yield
    except OperationalError as error:
        reason = str(error).strip() or "no reason given"
        advice = remedy(reason, connection.vendor)
        if not advice:
            raise
        first = reason.splitlines()[0]
        raise SetupError(f"The database refused: {first}\n{advice}") from error
    except OSError as error:
        if error.errno not in place.REMEDIES:
            raise
        where = Path(error.filename or settings.DATA_DIR)
        raise place.unwritable(where, error) from error


def remedy(reason: str, vendor: str) -> str:
    """Tell what to look at; nothing, when the fault is the program's own."""
    if vendor == "postgresql":
        return "Is the server that DATABASE_URL names running, and its login right?"
    if any(sign in reason for sign in REFUSALS):
        return f"Is there room on the disk, and may you write in {settings.DATA_DIR}?"
    return ""


def migrate() -> str:
    executor = MigrationExecutor(connection)
    plan = executor.migration_plan(executor.loader.graph.leaf_nodes())
    if not plan:
        return "unchanged"
    call_command("migrate", interactive=False, verbosity=0)
    return f"{len(plan)} changes"


def collect() -> str:
    """Gather and compress the pages' files, unless none changed since last time."""
    mark, seen = settings.STATIC_ROOT / ".mark", fingerprint()
    if mark.exists() and mark.read_text("ascii") == seen:
        return "unchanged"
    call_command("collectstatic", interactive=False, verbosity=0)
    mark.write_text(seen, "ascii")
    return "collected"


def fingerprint() -> str:
    found = [
        f"{path} {Path(storage.path(path)).stat().st_mtime_ns} {storage.size(path)}"
        for finder in get_finders()
        for path, storage in finder.list([])
    ]
    return hashlib.sha256("\n".join(sorted(found)).encode()).hexdigest()


def first_owner(email: str | None) -> tuple[User, str]:
    """Find who owns this place, or make the first owner with a password shown once."""
    known = User.objects.order_by("joined_at", "pk")
    asked = known.filter(email=email.lower()).first() if email else known.first()
    if asked is not None:
        return asked, asked.email
    if known.exists():
        raise SetupError(
            f"Nobody here signs in as {email}.\n"
            "An owner of the farm can let new people in on its page of people."
        )
    password = "-".join(
        "".join(secrets.choice(LETTERS) for _ in range(4)) for _ in range(4)
    )
    try:
        owner = User.objects.create_user(email or options.OWNER, password)
    except ValidationError as error:
        raise SetupError(
            f"{email} cannot be used as an address: {' '.join(error.messages)}\n"
            "Try: python3 manage.py start --owner you@example.org"
        ) from error
    return owner, (
        f"made\n    Sign in as {owner.email} with the password {password}\n"
        "    It is shown only this once; change it after signing in."
    )


def wants_demo(said: bool | None) -> bool:
    if Farm.objects.exists():
        return False
    if said is not None or not sys.stdin.isatty():
        return bool(said)
    try:
        return input(ASK).strip().lower() in {"y", "yes"}
    except EOFError:
        return False
