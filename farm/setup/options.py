"""What `start` can be told; read before and after the packages are there."""

import argparse

PORT = 8000
HOST = "127.0.0.1"
OWNER = "owner@localhost"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add the options of `start` to a parser."""
    parser.add_argument(
        "--port", type=_port, default=PORT, help=f"port to serve on (usually {PORT})"
    )
    parser.add_argument(
        "--host",
        default=HOST,
        help=f"address to serve on (usually {HOST}, this machine only; "
        "0.0.0.0 lets telephones on the same network in)",
    )
    parser.add_argument(
        "--demo",
        action=argparse.BooleanOptionalAction,
        default=None,
        help="load a made-up farm into an empty database, or do not ask",
    )
    parser.add_argument(
        "--owner",
        metavar="EMAIL",
        help=f"who owns the farm at the first start (otherwise {OWNER})",
    )
    parser.add_argument(
        "--check", action="store_true", help="set everything up, but do not serve"
    )


def read(arguments: list[str]) -> argparse.Namespace:
    """Read the options of `start`; a wrong one ends with a usage line."""
    parser = argparse.ArgumentParser(
        prog="manage.py start",
        description="Set this checkout up, if need be, and serve it.",
    )
    add_arguments(parser)
    return parser.parse_args(arguments)


def _port(text: str) -> int:
    if not text.isdecimal() or not 1 <= int(text) <= 65535:
        raise argparse.ArgumentTypeError("a port is a number from 1 to 65535")
    return int(text)
