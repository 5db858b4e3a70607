"""Amounts inside a written measure: numbers, the words after them, their sum."""

import re

from farm.units.numbers import NUMBER, read_number, tidy
from farm.units.troubles import Trouble, UnitError
from farm.units.words import Table

_PARTING = str.maketrans(".-", "  ")
_BARE = re.compile(r"[-+0-9.,/\s]+")


def with_default(text: str, unit: str | None) -> str:
    """Add the unit to a number that is written alone."""
    return f"{text} {tidy(unit)}" if unit and _BARE.fullmatch(text) else text


def quantity(text: str, table: Table, default_unit: str | None) -> float:
    """Return the sum of amounts with units, each unit smaller than the one before."""
    written = with_default(text.strip(), default_unit)
    total, last = 0.0, float("inf")
    for number, word in amounts(written):
        if not word:
            raise UnitError(
                Trouble.NO_UNIT, understood=number.group().strip(), known=table.shown
            )
        if word not in table:
            raise UnitError(
                Trouble.UNKNOWN_UNIT,
                understood=number.group().strip(),
                rest=word,
                known=table.shown,
            )
        factor = table.factors[word]
        value = read_number(number)
        if factor >= last or (value < 0 and last < float("inf")):
            raise UnitError(Trouble.NOT_UNDERSTOOD, rest=written)
        total, last = total + value * factor, factor
    return total


def one(text: str) -> tuple[float, str]:
    """Return the only number in ``text`` and the words after it."""
    found = amounts(text)
    if len(found) != 1:
        raise UnitError(Trouble.NOT_UNDERSTOOD, rest=text)
    number, word = found[0]
    return read_number(number), word


def amounts(text: str) -> list[tuple[re.Match[str], str]]:
    """Part "2 lb 3 oz" into its numbers and the words after each."""
    numbers = list(NUMBER.finditer(text))
    if not numbers:
        raise UnitError(Trouble.NO_NUMBER, rest=text)
    if before := text[: numbers[0].start()].strip():
        raise UnitError(Trouble.NOT_UNDERSTOOD, rest=before)
    ends = [number.start() for number in numbers[1:]] + [len(text)]
    words = [
        " ".join(text[number.end() : end].translate(_PARTING).split())
        for number, end in zip(numbers, ends, strict=True)
    ]
    if not all(words[:-1]):
        raise UnitError(Trouble.NOT_UNDERSTOOD, rest=text)
    return list(zip(numbers, words, strict=True))


def positive(
    value: float, text: str, largest: float, *, zero_ok: bool = False
) -> float:
    """Return ``value`` if it is above zero, or zero where allowed, and not absurd."""
    understood = " ".join(text.split())
    if value < 0 or (value == 0 and not zero_ok):
        reason = Trouble.NEGATIVE if zero_ok else Trouble.NOT_POSITIVE
        raise UnitError(reason, understood=understood)
    if value > largest:
        raise UnitError(Trouble.TOO_LARGE, understood=understood)
    return value
