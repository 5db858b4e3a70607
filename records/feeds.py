"""A calendar as RFC 5545 has it: lines folded at 75 octets, days without hours."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

MOST_OCTETS = 75
PRODUCT = "-//Cover between//Duties//EN"
DAY = dt.timedelta(days=1)


@dataclass(frozen=True)
class Event:
    """Whole days, the last one counted in; ``written_at`` is in UTC."""

    key: str
    title: str
    first: dt.date
    last: dt.date
    written_at: dt.datetime
    words: str = ""


def calendar(name: str, events: Iterable[Event]) -> bytes:
    """The whole calendar, ready to be sent."""
    lines = [
        "BEGIN:VCALENDAR",
        "VERSION:2.0",
        f"PRODID:{PRODUCT}",
        "CALSCALE:GREGORIAN",
        f"X-WR-CALNAME:{escaped(name)}",
    ]
    for event in events:
        lines += _event(event)
    lines.append("END:VCALENDAR")
    return "".join(f"{part}\r\n" for line in lines for part in folded(line)).encode()


def _event(event: Event) -> Iterator[str]:
    yield "BEGIN:VEVENT"
    yield f"UID:{event.key}"
    yield f"DTSTAMP:{event.written_at.astimezone(dt.UTC):%Y%m%dT%H%M%SZ}"
    yield f"DTSTART;VALUE=DATE:{event.first:%Y%m%d}"
    # The end of whole days is the day after the last.
    yield f"DTEND;VALUE=DATE:{event.last + DAY:%Y%m%d}"
    yield f"SUMMARY:{escaped(event.title)}"
    if event.words:
        yield f"DESCRIPTION:{escaped(event.words)}"
    yield "TRANSP:TRANSPARENT"
    yield "END:VEVENT"


def escaped(text: str) -> str:
    """Text with what the format itself uses kept apart."""
    text = text.replace("\\", "\\\\").replace(";", r"\;").replace(",", r"\,")
    plain = text.replace("\r\n", "\n").replace("\r", "\n").replace("\n", r"\n")
    return "".join(mark for mark in plain if mark >= " " and mark != "\x7f")


def folded(line: str) -> Iterator[str]:
    """A line in parts of 75 octets at most; no letter is cut in two."""
    part, room = "", MOST_OCTETS
    for mark in line:
        size = len(mark.encode())
        if size > room:
            yield part
            # The next part begins with a space, which counts.
            part, room = " ", MOST_OCTETS - 1
        part += mark
        room -= size
    yield part
