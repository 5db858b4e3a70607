"""The address to serve on: is it free, and by which names is it reached."""

import errno
import socket
import sys

from farm.setup.errors import SetupError

EVERYWHERE = {"0.0.0.0", "::", ""}  # noqa: S104
TRIES = 20


def require_free(host: str, port: int) -> None:
    """Refuse an address that cannot be served on, and say what to try."""
    try:
        _bind(host, port)
    except OSError as error:
        raise SetupError(_why(host, port, error)) from error


def _bind(host: str, port: int) -> None:
    family = socket.AF_INET6 if ":" in host else socket.AF_INET
    with socket.socket(family, socket.SOCK_STREAM) as probe:
        if sys.platform != "win32":
            # Otherwise a port stays taken for a minute after the last stop.
            probe.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
        probe.bind((host, port))


def _why(host: str, port: int, error: OSError) -> str:
    if isinstance(error, socket.gaierror) or error.errno == errno.EADDRNOTAVAIL:
        return (
            f"This machine has no address {host}.\n"
            "Try: python3 manage.py start --host 127.0.0.1"
        )
    if error.errno == errno.EADDRINUSE:
        return (
            f"Port {port} is taken by another program.\n"
            f"Try: python3 manage.py start --port {_next_free(host, port)}"
        )
    if error.errno in (errno.EACCES, errno.EPERM):
        return (
            f"This account may not serve on port {port}.\n"
            f"Try: python3 manage.py start --port {_next_free(host, 8000)}"
        )
    return f"Cannot serve on {host}, port {port}: {error.strerror or error}."


def _next_free(host: str, port: int) -> int:
    for candidate in range(port + 1, min(port + TRIES, 65535) + 1):
        try:
            _bind(host, candidate)
        except OSError:
            continue
        return candidate
    return port + 1 if port < 65535 else 8000


def names(host: str) -> list[str]:
    """List the names under which other machines reach an address."""
    if host not in EVERYWHERE:
        return [f"[{host}]" if ":" in host else host]
    own = socket.gethostname().lower()
    return [name for name in (_outward_address(), own, f"{own}.local") if name]


def _outward_address() -> str:
    # Nothing is sent: connecting a datagram socket only picks the way out.
    with socket.socket(socket.AF_INET, socket.SOCK_DGRAM) as probe:
        try:
            probe.connect(("192.0.2.1", 9))
        except OSError:
            return ""
        return str(probe.getsockname()[0])


def url(host: str, port: int) -> str:
    """Write the address as it goes into a browser."""
    return f"http://{names(host)[0]}:{port}/"
