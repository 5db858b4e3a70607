"""Each change sealed together with the one before it, as plain values."""

from __future__ import annotations

import datetime as dt
import enum
import hashlib
import json
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import Any

# What a seal covers. The order is that of the columns a walk reads.
SEALED = (
    "farm_id",
    "number",
    "at",
    "by_id",
    "verb",
    "noun",
    "object_id",
    "label",
    "before",
    "after",
    "reason",
    "prev",
)
# The first entry of a farm follows nothing.
NOTHING = ""
_write = json.JSONEncoder(
    ensure_ascii=False, allow_nan=False, sort_keys=True, separators=(",", ":")
).encode


class Flaw(enum.Enum):
    """What is wrong where a chain breaks."""

    MISSING = "missing"
    OTHER_BEFORE = "other_before"
    REWRITTEN = "rewritten"
    CUT_OFF = "cut_off"
    NOT_COUNTED = "not_counted"


@dataclass(frozen=True)
class Break:
    """The first entry that does not fit, what was expected there and what stands."""

    flaw: Flaw
    number: int
    expected: str
    found: str


@dataclass(frozen=True)
class Walk:
    """How far a chain was walked, and where it breaks, if it does."""

    entries: int
    digest: str
    broken: Break | None = None


def canonical(entry: Mapping[str, Any]) -> str:
    """An entry as one text that can only be written in one way.

    Texts, whole numbers and objects of them are written as RFC 8785 has it; a
    moment is written in UTC to the microsecond.
    """
    told = {**entry, "at": moment(entry["at"])} if "at" in entry else entry
    return _write(told)


def moment(at: dt.datetime) -> str:
    return at.astimezone(dt.UTC).isoformat(timespec="microseconds")


def seal(entry: Mapping[str, Any]) -> str:
    """The SHA-256 of an entry's canonical text, in hexadecimal."""
    return hashlib.sha256(canonical(entry).encode()).hexdigest()


def walk(rows: Iterable[tuple[Any, ...]]) -> Walk:
    """Walk the columns SEALED and the digest, in the order of their numbers."""
    count, last = 0, NOTHING
    for *columns, digest in rows:
        entry = dict(zip(SEALED, columns, strict=True))
        flaw = _flaw(entry, digest, count + 1, last)
        if flaw is not None:
            return Walk(count, last, flaw)
        count, last = count + 1, digest
    return Walk(count, last)


def _flaw(
    entry: Mapping[str, Any], digest: str, number: int, last: str
) -> Break | None:
    if entry["number"] != number:
        return Break(Flaw.MISSING, number, str(number), str(entry["number"]))
    if entry["prev"] != last:
        return Break(Flaw.OTHER_BEFORE, number, last, entry["prev"])
    sealed = seal(entry)
    if sealed != digest:
        return Break(Flaw.REWRITTEN, number, digest, sealed)
    return None
