"""What a cell holds, and how it is read from text or from a workbook."""

from __future__ import annotations

import datetime as dt
import json
import math
import re
from collections.abc import Callable
from decimal import Decimal
from enum import StrEnum
from typing import Any, NoReturn

from django.core.exceptions import ValidationError
from django.utils.translation import gettext as _

Plain = str | int | float | dt.date | dt.time | None

# Beyond this no farm has anything, in whatever unit.
LARGEST = 1e12

# A spreadsheet takes text that begins so for a formula.
RISKY = "=+\\-@\t\r\n\uff1d\uff0b\uff0d\uff20"
TO_GUARD = re.compile(f"'*[{RISKY}]")
GUARDED = re.compile(f"'+[{RISKY}]")

NUMBER = re.compile(r"[+-]?(\d+\.?\d*|\.\d+)([eE][+-]?\d{1,3})?", re.ASCII)
WHOLE = re.compile(r"[+-]?\d{1,18}", re.ASCII)
DAY = re.compile(r"\d{4}-\d{2}-\d{2}", re.ASCII)
TIME = re.compile(r"\d{1,2}:\d{2}(:\d{2}(\.\d{1,6})?)?", re.ASCII)
YES, NO = {"yes", "true", "1"}, {"no", "false", "0"}


class Sort(StrEnum):
    TEXT = "text"
    NUMBER = "number"
    WHOLE = "whole"
    YES = "yes"
    DAY = "day"
    TIME = "time"
    MOMENT = "moment"
    JSON = "json"
    KEY = "key"
    FILE = "file"


# Only these may begin like a formula; a number below zero must stay a number.
WORDED = frozenset({Sort.TEXT, Sort.JSON, Sort.FILE})


class FormulaError(Exception):
    """A workbook's cell that holds a formula, or what is left of one."""


def guard(text: str) -> str:
    """Keep a spreadsheet from reckoning with text."""
    return f"'{text}" if TO_GUARD.match(text) else text


def unguard(text: str) -> str:
    return text[1:] if GUARDED.match(text) else text


def tell(value: Any, sort: Sort) -> Plain:
    """A field's value as it stands in a cell."""
    if value is None:
        return None
    if sort is Sort.YES:
        return "yes" if value else "no"
    if sort is Sort.JSON:
        return json.dumps(value, ensure_ascii=False)
    if sort is Sort.MOMENT:
        return str(value.astimezone(dt.UTC).isoformat())
    if sort in {Sort.TEXT, Sort.KEY, Sort.FILE} or isinstance(value, Decimal):
        return str(value)
    plain: Plain = value
    return plain


def as_text(value: Plain) -> str:
    """A cell of a text file; nothing is lost of a number."""
    if value is None:
        return ""
    if isinstance(value, float):
        text = repr(value)
        is_whole = value.is_integer() and abs(value) < LARGEST and text != "-0.0"
        return str(int(value)) if is_whole else text
    if isinstance(value, dt.date | dt.time):
        return value.isoformat()
    return str(value)


def read(raw: Any, sort: Sort) -> Any:
    """A cell's value; None for an empty cell, text excepted."""
    if sort in WORDED:
        return _words(raw, sort)
    if isinstance(raw, str):
        raw = raw.strip()
    if raw is None or raw == "":
        return None
    return READERS[sort](raw)


def refuse(sentence: str) -> NoReturn:
    raise ValidationError(sentence)


def seen(raw: Any) -> str:
    """What stood in the cell, short enough for a sentence."""
    text = str(raw)
    return text if len(text) <= 40 else f"{text[:40]}…"


def _words(raw: Any, sort: Sort) -> Any:
    text = raw if isinstance(raw, str) else _spoken(raw)
    text = unguard(text)
    if not _is_sound(text):
        refuse(_("There is a character in it that is no text."))
    return _json(text) if sort is Sort.JSON else text


def _is_sound(text: str) -> bool:
    """Neither a null nor half a character, which tables cannot keep."""
    return "\0" not in text and not any("\ud800" <= mark <= "\udfff" for mark in text)


def _spoken(raw: Any) -> str:
    """A workbook's number or day where words belong: a lot number, say."""
    if isinstance(raw, bool):
        return "yes" if raw else "no"
    if isinstance(raw, dt.datetime) and raw.time() == dt.time():
        raw = raw.date()
    return as_text(raw)


def _json(text: str) -> Any:
    if not text.strip():
        return None
    try:
        found = json.loads(text, parse_constant=refuse)
        again = json.dumps(found, ensure_ascii=False)
    except (ValueError, RecursionError, ValidationError):
        refuse(_("This cannot be read: it is not JSON."))
    if "\\u0000" in again or not _is_sound(again):
        refuse(_("There is a character in it that is no text."))
    return found


def _number(raw: Any) -> float:
    if isinstance(raw, bool):
        refuse(_("A number belongs here."))
    if isinstance(raw, int | float):
        value = float(raw) if abs(raw) <= LARGEST else math.inf
    else:
        text = str(raw).replace("\u2212", "-")
        if not NUMBER.fullmatch(text):
            refuse(_("“%s” is not a number. Write it like 1234.5.") % seen(raw))
        value = float(text)
    if not abs(value) <= LARGEST:
        refuse(_("“%s” is larger than any farm.") % seen(raw))
    return value


def _whole(raw: Any) -> int:
    if isinstance(raw, float) and raw.is_integer() and abs(raw) <= LARGEST:
        return int(raw)
    if isinstance(raw, bool) or not WHOLE.fullmatch(str(raw)):
        refuse(_("“%s” is not a whole number.") % seen(raw))
    return int(raw)


def _yes(raw: Any) -> bool:
    word = str(raw).lower()
    if word not in YES | NO:
        refuse(_("“%s” is neither yes nor no.") % seen(raw))
    return word in YES


def _day(raw: Any) -> dt.date:
    if isinstance(raw, dt.datetime):
        raw = raw.date() if raw.time() == dt.time() else raw.isoformat()
    if isinstance(raw, dt.date):
        return raw
    try:
        if DAY.fullmatch(str(raw)):
            return dt.date.fromisoformat(raw)
    except ValueError:
        pass
    refuse(_("“%s” is not a day. Write it like 2026-07-04.") % seen(raw))


def _time(raw: Any) -> dt.time:
    if isinstance(raw, dt.time):
        return raw
    try:
        if TIME.fullmatch(str(raw)):
            return dt.time.fromisoformat(f"0{raw}"[-len(raw) - (raw[1] == ":") :])
    except ValueError:
        pass
    refuse(_("“%s” is not a time of day. Write it like 14:30.") % seen(raw))


def _moment(raw: Any) -> dt.datetime:
    try:
        moment = dt.datetime.fromisoformat(str(raw))
        if moment.tzinfo is not None:
            return moment
    except ValueError:
        pass
    refuse(_("“%s” is not a moment: 2026-07-04T14:30+00:00 is one.") % seen(raw))


READERS: dict[Sort, Callable[[Any], Any]] = {
    Sort.NUMBER: _number,
    Sort.WHOLE: _whole,
    Sort.YES: _yes,
    Sort.DAY: _day,
    Sort.TIME: _time,
    Sort.MOMENT: _moment,
    Sort.KEY: lambda raw: unguard(_spoken(raw) if not isinstance(raw, str) else raw),
}
