"""Clean-outs, mishaps, and records as such."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass

Day = dt.date | None


@dataclass(frozen=True, slots=True)
class Cleaned:
    """A machine or store cleaned."""

    id: int
    machine: str
    on: dt.date
    held_before: str = ""
    method: str = ""
    done_by: str = ""


@dataclass(frozen=True, slots=True)
class Mishap:
    """Something that went wrong, and who was told."""

    id: int
    field_id: int | None
    what: str
    on: dt.date
    done_about_it: str
    told_to: str
    account: str = ""


@dataclass(frozen=True, slots=True)
class Trained:
    """Somebody taught something."""

    id: int
    on: dt.date
    person: str
    topic: str
    trainer: str = ""
    until: Day = None
    subject: str = "other"


@dataclass(frozen=True, slots=True)
class Task:
    """Work somebody was given, and the days it may be done on."""

    id: int
    field_id: int
    first: dt.date
    last: dt.date
    who: str


@dataclass(frozen=True, slots=True)
class Entry:
    """A record as such: when it happened, when it was written, by whom done."""

    noun: str
    id: int
    label: str
    on: dt.date
    written_on: dt.date
    done_by: str
    field_id: int | None = None
