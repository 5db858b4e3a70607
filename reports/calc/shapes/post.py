"""What is posted for the crew."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class KeepOut:
    """A field nobody goes into before an hour; None where the label is not typed."""

    field: str
    product: str
    applied_on: dt.date
    until: dt.datetime | None
    initials: str


@dataclass(frozen=True, slots=True)
class FirstHarvest:
    """A field with nothing to be harvested before a day; None where none can be told.

    ``raw_manure`` says that manure holds the harvest back, else a label does;
    ``compost`` that it is compost which counts as such.
    """

    field: str
    product: str
    on: dt.date | None
    raw_manure: bool
    compost: bool = False


@dataclass(frozen=True, slots=True)
class Display:
    """What must be on show of a spray: by when, until when, and how long it is kept.

    ``until``, ``kept_until`` and ``reentry_hours`` are None where the interval is not
    typed; ``crop`` is empty where no planting is named. [h]
    """

    field: str
    product: str
    ended_at: dt.datetime
    due: dt.datetime
    posted_at: dt.datetime | None
    until: dt.datetime | None
    kept_until: dt.date | None
    registration: str = ""
    crop: str = ""
    started_at: dt.time | None = None
    reentry_hours: float | None = None
    # Where nobody wrote down the hour, the day counts to its end.
    is_timed: bool = True


@dataclass(frozen=True, slots=True)
class Plot:
    """A piece of land by number and name, what it lies in and what is drawn over it."""

    id: int
    name: str
    parent_id: int | None
    beside: frozenset[int] = frozenset()


@dataclass(frozen=True, slots=True)
class Sprayed:
    """A spray on a field, with the hours on its label where they are typed. [h]"""

    field_id: int
    field: str
    product: str
    on: dt.date
    ended_at: dt.datetime
    reentry_hours: float | None
    done_by: str
