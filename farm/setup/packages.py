"""The checkout's own Python environment, and the packages in it."""

import hashlib
import importlib.util
import os
import subprocess
import sys
import tomllib
from pathlib import Path

from farm.setup.errors import SetupError
from farm.setup.place import CHECKOUT, unwritable

ENVIRONMENT = CHECKOUT / ".venv"
STAMP = "installed-lists"
LAST_LINES = 8
OFFLINE = (
    "temporary failure in name resolution",
    "failed to resolve",
    "name or service not known",
    "failed to establish a new connection",
    "network is unreachable",
    "connection refused",
    "connection timed out",
    "connecttimeout",
    "proxyerror",
)


def python(environment: Path = ENVIRONMENT) -> Path:
    """Name the interpreter inside an environment."""
    if sys.platform == "win32":
        return environment / "Scripts" / "python.exe"
    return environment / "bin" / "python"


def inside(environment: Path = ENVIRONMENT) -> bool:
    """Tell whether this very process runs in the environment."""
    return Path(sys.prefix).resolve() == environment.resolve()


def wanted(*extras: str, checkout: Path = CHECKOUT) -> list[str]:
    """List the packages pyproject.toml names, with those of the extras."""
    project = tomllib.loads((checkout / "pyproject.toml").read_text("utf-8"))["project"]
    lists = [project["dependencies"]]
    lists += [project["optional-dependencies"][extra] for extra in extras]
    return [package for each in lists for package in each]


def stamp(packages: list[str], environment: Path) -> str:
    """Sum up a list of packages and the Python they were installed for."""
    try:
        interpreter = (environment / "pyvenv.cfg").read_text("utf-8")
    except OSError:
        interpreter = ""
    version = [line for line in interpreter.splitlines() if "version" in line]
    lines = "\n".join([*sorted(packages), *version])
    return hashlib.sha256(lines.encode()).hexdigest()


def current(packages: list[str], environment: Path = ENVIRONMENT) -> bool:
    """Tell whether exactly these packages were already installed."""
    if not python(environment).exists():
        return False
    try:
        lists = (environment / STAMP).read_text("ascii").split()
    except OSError:
        return False
    return stamp(packages, environment) in lists


def ensure(*extras: str, environment: Path = ENVIRONMENT) -> bool:
    """Make the environment and install into it; False when nothing was needed."""
    packages = wanted(*extras)
    if current(packages, environment):
        return False
    make(environment)
    install(packages, environment)
    # Whoever has the packages for the tests has those for serving, too.
    lists = {stamp(packages, environment), stamp(wanted(), environment)}
    try:
        (environment / STAMP).write_text("\n".join(sorted(lists)) + "\n", "ascii")
    except OSError as error:
        raise _unwritable(environment, error) from error
    return True


def make(environment: Path) -> None:
    """Make the environment unless a working one is there."""
    _require_writable(environment)
    broken = environment.exists() and not python(environment).exists()
    if broken and not (environment / "pyvenv.cfg").exists():
        raise SetupError(
            f"The folder {environment} is not a Python environment.\n"
            "Move it away and start again."
        )
    if broken or not environment.exists():
        _require_ensurepip()
        command = [sys.executable, "-m", "venv", "--clear", str(environment)]
        _run(command, "The Python environment could not be made", environment)
    if not any(environment.glob("[Ll]ib*/**/site-packages/pip")):
        command = [str(python(environment)), "-m", "ensurepip", "--upgrade"]
        _run(command, "pip could not be put into the environment", environment)


def install(packages: list[str], environment: Path) -> None:
    """Install packages with pip; only they, not this checkout, are installed."""
    pip = [str(python(environment)), "-m", "pip", "install", "--quiet", "--no-input"]
    pip += ["--disable-pip-version-check", "--retries", "2", "--timeout", "15"]
    _run([*pip, *packages], "The packages could not be installed", environment)


def _require_writable(environment: Path) -> None:
    folder = environment if environment.exists() else environment.parent
    probe = folder / f".writable-{os.getpid()}"
    try:
        probe.touch()
        probe.unlink()
    except OSError as error:
        raise _unwritable(environment, error) from error


def _unwritable(environment: Path, error: OSError) -> SetupError:
    first = str(unwritable(environment, error)).splitlines()[:2]
    return SetupError(
        "\n".join(first)
        + "\nThe packages go there. Copy the checkout to a folder you may write in."
    )


def _require_ensurepip() -> None:
    if importlib.util.find_spec("ensurepip") is None:
        name = f"python{sys.version_info[0]}.{sys.version_info[1]}-venv"
        raise SetupError(
            "This Python lacks the part that makes environments.\n"
            f"On Debian or Ubuntu: sudo apt-get install {name}\n"
            "Then start again."
        )


def _run(command: list[str], failure: str, environment: Path) -> None:
    done = subprocess.run(
        command,
        stdout=subprocess.PIPE,
        stderr=subprocess.STDOUT,
        text=True,
        errors="replace",
        check=False,
    )
    if done.returncode:
        raise SetupError(explain(failure, done.stdout, environment))


def explain(failure: str, output: str, environment: Path) -> str:
    """Turn what a failed installer wrote into what happened and what to try."""
    low = output.lower()
    if "no space left on device" in low:
        reason = f"The disk that holds {environment} is full. Free some space."
    elif "read-only file system" in low:
        reason = f"The disk that holds {environment} is read-only."
    elif any(sign in low for sign in OFFLINE):
        reason = "The package index cannot be reached. Is this machine on line?"
    elif "ensurepip" in low:
        reason = (
            "Part of Python is missing. On Debian: sudo apt-get install python3-venv"
        )
    else:
        reason = f"If it fails again, delete {environment} and start afresh."
    lines = [line for line in output.splitlines() if line.strip()]
    errors = [line for line in lines if line.startswith("ERROR")]
    lines = (errors or lines)[-LAST_LINES:]
    said = "".join(f"  | {line}\n" for line in lines)
    return f"{failure}.\n{said}{reason}\nThen run the same command again."
