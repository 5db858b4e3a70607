"""The way in: set up what is missing, then hand over to the environment's Python."""

import argparse
import importlib
import os
import platform
import subprocess
import sys
import tempfile
from pathlib import Path

from farm.setup import addresses, listen, native, options, packages, place
from farm.setup.errors import SetupError
from farm.setup.steps import STEPS_TO_SERVE, STEPS_TO_TEST, Steps

READY = "FARM_SET_UP"
INTERRUPTED = 130
# A file of tests stays on one worker, since it makes its cast of people once.
TESTING = ("-n", "auto", "--dist", "loadfile", "--no-loadscope-reorder")


def main(argv: list[str]) -> int:
    """Run one command; whatever stops the set-up is said in plain sentences."""
    try:
        if hasattr(sys.stdout, "reconfigure"):
            sys.stdout.reconfigure(errors="replace")
        return _dispatch(argv)
    except SetupError as error:
        sys.stdout.flush()
        sys.stderr.write(f"\n{error}\n")
        return 1
    except KeyboardInterrupt:
        sys.stderr.write("\nStopped.\n")
        return INTERRUPTED


def _dispatch(argv: list[str]) -> int:
    command, rest = (argv[1] if len(argv) > 1 else ""), argv[2:]
    if command == "test":
        return _test(rest)
    # Taken out at once, so that no program started from here believes it.
    ready = os.environ.pop(READY, "") == "yes"
    if command == "start" and not ready:
        _set_up_to_serve(options.read(rest))
        return _hand_over(argv)
    if not packages.inside() and packages.python().exists():
        return _hand_over(argv)
    return _django(argv)


def _set_up_to_serve(chosen: argparse.Namespace) -> None:
    if not chosen.check:
        listen.require_free(chosen.host, chosen.port)
    _set_up(Steps(STEPS_TO_SERVE))
    if chosen.host != options.HOST:
        known = [os.environ.get("ALLOWED_HOSTS", ""), *listen.names(chosen.host)]
        os.environ["ALLOWED_HOSTS"] = ",".join(filter(None, known))


def _set_up(steps: Steps, *extras: str) -> None:
    with steps.step(f"Python {platform.python_version()}"):
        pass
    with steps.step("Folder for the data") as ending:
        addresses.check(os.environ)
        folder = str(place.made(place.data_folder()))
        # A name that starts from here would mean another folder to the server.
        os.environ["FARM_DATA"] = folder
        ending.append(folder)
    ready = packages.current(packages.wanted(*extras))
    patience = "" if ready else " (a minute or two, this once)"
    with steps.step(f"Packages{patience}") as ending:
        ending.append("installed" if packages.ensure(*extras) else "unchanged")
    with steps.step("Libraries for the printed report") as ending:
        if native.present():
            return
        if native.may_install() and native.install() and native.present():
            ending.append("installed")
        else:
            ending.append(f"missing; no PDF until you\n    {native.advice()}")


def _test(rest: list[str]) -> int:
    # Tests must not find, or leave, anything in the farm's own data folder.
    with tempfile.TemporaryDirectory(prefix="farm-test-") as folder:
        os.environ["FARM_DATA"] = folder
        _set_up(Steps(STEPS_TO_TEST), "test")
        command = [str(packages.python()), "-m", "pytest", *TESTING]
        return _child([*command, *rest], cwd=place.CHECKOUT)


def _hand_over(argv: list[str]) -> int:
    command = [str(packages.python()), *argv]
    environ = {**os.environ, READY: "yes"}
    sys.stdout.flush()
    if sys.platform != "win32":
        os.execve(command[0], command, environ)
    # There, exec would let go of the console before the program ends.
    return _child(command, environ=environ)


def _child(
    command: list[str],
    *,
    cwd: Path | None = None,
    environ: dict[str, str] | None = None,
) -> int:
    sys.stdout.flush()
    with subprocess.Popen(command, cwd=cwd, env=environ) as process:
        while True:
            try:
                return process.wait()
            except KeyboardInterrupt:
                # The child heard it too, and ends in its own way.
                continue


def _django(argv: list[str]) -> int:
    os.environ.setdefault("DJANGO_SETTINGS_MODULE", "farm.settings")
    # Imported here, because until now Django need not have been installed.
    try:
        management = importlib.import_module("django.core.management")
        exceptions = importlib.import_module("django.core.exceptions")
    except ModuleNotFoundError as error:
        raise SetupError(
            f"The package {error.name} is not installed yet.\n"
            "Set this checkout up first: python3 manage.py start"
        ) from error
    try:
        importlib.import_module(os.environ["DJANGO_SETTINGS_MODULE"])
    except exceptions.ImproperlyConfigured as error:
        raise SetupError(str(error)) from error
    management.execute_from_command_line(argv)
    return 0
