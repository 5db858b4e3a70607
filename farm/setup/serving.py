"""The web server for this kind of machine."""

import os
import subprocess
import sys
from pathlib import Path

from farm.setup.place import PRIVATE

WORKERS = "2"
THREADS = "4"


def command(host: str, port: int, platform: str = sys.platform) -> list[str]:
    """Write the line that starts the server, run by this very Python."""
    if platform == "win32":
        line = ["waitress", f"--host={host}", f"--port={port}", f"--threads={THREADS}"]
        return [sys.executable, "-m", *line, "farm.wsgi:application"]
    bind = f"[{host}]:{port}" if ":" in host else f"{host}:{port}"
    # The control socket would be one for all the farms of an account.
    line = ["gunicorn", "--bind", bind, "--threads", THREADS, "--no-control-socket"]
    line += ["--umask", str(PRIVATE), "--graceful-timeout", "10"]
    return [sys.executable, "-m", *line, "--log-level", "warning", "farm.wsgi"]


def serve(host: str, port: int, checkout: Path) -> None:
    """Become the server, and do not come back except where that cannot be done."""
    os.environ.setdefault("WEB_CONCURRENCY", WORKERS)
    os.environ["DJANGO_SETTINGS_MODULE"] = "farm.settings"
    os.chdir(checkout)
    line = command(host, port)
    if sys.platform != "win32":
        os.execv(line[0], line)
    subprocess.run(line, check=False)
