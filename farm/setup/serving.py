"""The web server for this kind of machine, and the worker beside it."""

import os
import signal
import subprocess
import sys
from pathlib import Path

from farm.setup.place import PRIVATE

WORKERS = "2"
THREADS = "4"
# How often to look after both, and how long the worker may take to end. [s]
LOOK_S, PATIENCE_S = 1.0, 10.0


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


def worker_command(checkout: Path) -> list[str]:
    """Write the line that starts the worker."""
    return [sys.executable, str(checkout / "manage.py"), "work"]


def serve(host: str, port: int, checkout: Path) -> int:
    """Run the server with the worker beside it; when the server ends, both do."""
    os.environ.setdefault("WEB_CONCURRENCY", WORKERS)
    os.environ["DJANGO_SETTINGS_MODULE"] = "farm.settings"
    os.chdir(checkout)
    return beside(command(host, port), worker_command(checkout))


def beside(server_line: list[str], worker_line: list[str]) -> int:
    """Run two programs; the second is started again if it is lost."""
    server = subprocess.Popen(server_line)
    worker = subprocess.Popen(worker_line)
    for name in ("SIGTERM", "SIGHUP"):
        if hasattr(signal, name):
            signal.signal(getattr(signal, name), lambda *_told: server.terminate())
    try:
        while True:
            try:
                return server.wait(LOOK_S)
            except subprocess.TimeoutExpired:
                if worker.poll() is not None:
                    worker = subprocess.Popen(worker_line)
            except KeyboardInterrupt:
                # Both heard it too, and end in their own way.
                continue
    finally:
        end(worker)


def end(worker: "subprocess.Popen[bytes]") -> None:
    """End the worker; a print under way is begun again at the next start."""
    worker.terminate()
    try:
        worker.wait(PATIENCE_S)
    except subprocess.TimeoutExpired:
        worker.kill()
        worker.wait()
