"""Numbers as people write them: fractions, thousands, points and commas."""

import re
import unicodedata

from farm.units.troubles import Trouble, UnitError

LONGEST = 80

_SAME = str.maketrans(
    {
        "º": "°",
        "′": "'",
        "’": "'",
        "‘": "'",
        "″": '"',
        "”": '"',
        "“": '"',
        "×": "x",
        "✕": "x",
        "*": "x",
        "⁄": "/",
        "−": "-",
        "–": "-",
    }
)

_RAISED = re.compile(r"(?<=[a-z])(?:\s?\^)?([23])(?![0-9.,a-z])")
NUMBER = re.compile(
    r"""[+-]?\s?(?:
        (?P<whole>[0-9]+)(?:\s|-)(?P<up>[0-9]+)/(?P<down>[0-9]+)   # 1 1/2, 1-1/2
      | (?P<over>[0-9]+)\s?/\s?(?P<under>[0-9]+)                   # 1/2
      | (?P<plain>[0-9]{1,3}(?:\s[0-9]{3})+(?![0-9])(?:[.,][0-9]+)?  # 1 200,5
          | [.,]?[0-9][0-9.,]*)                                    # 1,200.5
    )""",
    re.VERBOSE,
)


def tidy(text: str) -> str:
    """Return ``text`` in one plain spelling: lower case, no accents, ``m²`` for area.

    Raises
    ------
    UnitError
        With ``EMPTY`` or ``TOO_LONG``.

    Examples
    --------
    >>> tidy("1½ Hectáreas")
    '1 1/2 hectareas'
    >>> tidy("30 FT2")
    '30 ft²'
    """
    if len(text) > LONGEST:
        raise UnitError(Trouble.TOO_LONG, rest=text[:LONGEST])
    spelled = "".join(map(_spell, text.translate(_SAME))).translate(_SAME)
    bare = "".join(c for c in spelled if not unicodedata.combining(c)).casefold()
    raised = _RAISED.sub(lambda m: "²³"["23".index(m[1])], bare.replace("''", '"'))
    bare = " ".join(raised.split())
    if not bare:
        raise UnitError(Trouble.EMPTY)
    return bare


def _spell(char: str) -> str:
    """Open up fractions and joined signs, but keep the raised 2 and 3 of a unit."""
    if char == "²" or char == "³":
        return char.replace("²", "^2").replace("³", "^3")
    plain = unicodedata.normalize("NFKD", char)
    if unicodedata.decomposition(char).startswith("<fraction>"):
        return f" {plain} "
    return plain


def read_number(match: re.Match[str]) -> float:
    """Return the value of a match of ``NUMBER``.

    A point before decimals is always a decimal point, so "1.250" is one and a
    quarter, as on a scale. A lone comma before exactly three figures parts thousands,
    the habit in the United States ("1,200" is 1200), unless it follows a zero or more
    than three figures; any other lone comma is a decimal comma ("0,6").

    Raises
    ------
    UnitError
        ``AMBIGUOUS_NUMBER`` when points and commas fit neither way of writing;
        ``NO_NUMBER`` when a fraction has nothing under its stroke.
    """
    sign = -1.0 if match.group().startswith("-") else 1.0
    up = match["up"] or match["over"]
    if up is None:
        return sign * _plain(match["plain"])
    down = int(match["down"] or match["under"])
    if down == 0:
        raise UnitError(Trouble.NO_NUMBER, rest=match.group())
    return sign * (int(match["whole"] or 0) + int(up) / down)


_THOUSANDS = {
    mark: re.compile(rf"[0-9]{{1,3}}(?:{re.escape(mark)}[0-9]{{3}})+")
    for mark in (",", ".", " ")
}


def _plain(written: str) -> float:
    """Return the value of figures with points, commas or spaces among them."""
    figures = written.rstrip(".,")
    if " " in figures:
        return float(figures.replace(" ", "").replace(",", "."))
    marks = [c for c in figures if c in ".,"]
    if not marks:
        return float(figures)
    decimal = _decimal_mark(figures, marks)
    whole, _, part = figures.rpartition(decimal) if decimal else (figures, "", "")
    for mark in set(whole) & {",", "."}:
        if mark == decimal or not _THOUSANDS[mark].fullmatch(whole):
            raise UnitError(Trouble.AMBIGUOUS_NUMBER, rest=written)
    digits = whole.replace(",", "").replace(".", "")
    return float(f"{digits or 0}.{part or 0}")


def _decimal_mark(figures: str, marks: list[str]) -> str:
    """Return the mark before the decimals, or nothing if every mark parts thousands."""
    if len(set(marks)) == 2:
        return marks[-1]
    if len(marks) > 1:
        return ""
    thousands = marks[0] == "," and re.fullmatch(r"[1-9][0-9]{0,2},[0-9]{3}", figures)
    return "" if thousands else marks[0]
