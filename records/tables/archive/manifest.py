"""What an archive says of itself: each member with its length and its SHA-256."""

from __future__ import annotations

import datetime as dt
import hashlib
import json
from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import IO, Any

NAME = "manifest.json"
WHAT = "farm archive"
VERSION = 1
CHUNK = 1 << 16


@dataclass(frozen=True)
class Member:
    bytes: int
    sha256: str
    rows: int | None = None


@dataclass
class Manifest:
    farm: str
    slug: str
    saved_at: dt.datetime
    members: dict[str, Member] = field(default_factory=dict)
    # Papers whose files were already gone when the archive was made.
    lost: list[str] = field(default_factory=list)

    def as_json(self) -> bytes:
        told = {
            "what": WHAT,
            "version": VERSION,
            "farm": self.farm,
            "slug": self.slug,
            "saved_at": self.saved_at.astimezone(dt.UTC).isoformat(),
            "lost": self.lost,
            "members": {
                name: {key: v for key, v in vars(one).items() if v is not None}
                for name, one in self.members.items()
            },
        }
        return json.dumps(told, ensure_ascii=False, indent=1).encode()


def read(data: bytes) -> tuple[Any, Manifest]:
    """The version an archive is of, and what it says it holds.

    Raises
    ------
    ValueError
        Where it is not a manifest; the version is told first, so that an archive of
        another version may look otherwise.
    """
    told = json.loads(data)
    if not isinstance(told, dict) or told.get("what") != WHAT:
        raise ValueError(WHAT)
    if told.get("version") != VERSION:
        return told.get("version"), Manifest("", "", dt.datetime.min)
    try:
        return VERSION, _manifest(told)
    except (KeyError, TypeError, AttributeError) as error:
        raise ValueError(str(error)) from error


def _manifest(told: dict[str, Any]) -> Manifest:
    members = {
        str(name): Member(int(one["bytes"]), str(one["sha256"]), one.get("rows"))
        for name, one in told["members"].items()
    }
    saved_at = dt.datetime.fromisoformat(told["saved_at"])
    lost = [str(name) for name in told["lost"]]
    return Manifest(str(told["farm"]), str(told["slug"]), saved_at, members, lost)


def chunks(stream: IO[bytes]) -> Iterator[bytes]:
    while chunk := stream.read(CHUNK):
        yield chunk


def member_of(stream: IO[bytes]) -> Member:
    """Length and SHA-256 of a stream, read to its end."""
    length, digest = 0, hashlib.sha256()
    for chunk in chunks(stream):
        length += len(chunk)
        digest.update(chunk)
    return Member(length, digest.hexdigest())
