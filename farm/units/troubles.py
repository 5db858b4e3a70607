"""What can be wrong with a measure as written."""

from enum import StrEnum


class Trouble(StrEnum):
    """Why a measure could not be read."""

    EMPTY = "empty"
    TOO_LONG = "too_long"
    NO_NUMBER = "no_number"
    AMBIGUOUS_NUMBER = "ambiguous_number"
    NO_UNIT = "no_unit"
    UNKNOWN_UNIT = "unknown_unit"
    NO_AREA = "no_area"
    NOT_UNDERSTOOD = "not_understood"
    NOT_POSITIVE = "not_positive"
    NEGATIVE = "negative"
    TOO_LARGE = "too_large"


_SENTENCES = {
    Trouble.EMPTY: "Nothing is written here.",
    Trouble.TOO_LONG: "This is too long to be one measure.",
    Trouble.NO_NUMBER: 'There is no number that can be read in "{rest}".',
    Trouble.AMBIGUOUS_NUMBER: (
        '"{rest}" could be more than one number. '
        "Write it without commas, with a point before the decimals."
    ),
    Trouble.NO_UNIT: "{understood} has no unit. Units that can be used: {known}.",
    Trouble.UNKNOWN_UNIT: (
        '{understood} was understood, but not "{rest}". '
        "Units that can be used: {known}."
    ),
    Trouble.NO_AREA: (
        "{understood} was understood, but not on how much land. "
        'Add for example "per acre" or "per 1000 sq ft".'
    ),
    Trouble.NOT_UNDERSTOOD: '"{rest}" was not understood.',
    Trouble.NOT_POSITIVE: "{understood} is not more than zero.",
    Trouble.NEGATIVE: "{understood} is less than zero.",
    Trouble.TOO_LARGE: "{understood} is outside anything that can be meant here.",
}


class UnitError(ValueError):
    """A measure that could not be read, with what was understood of it.

    Attributes
    ----------
    reason : Trouble
        The one thing that is wrong.
    understood : str
        The part that made sense, as written; may be empty.
    rest : str
        The part that did not; may be empty.
    known : tuple of str
        Unit words that would have been accepted.
    """

    def __init__(
        self,
        reason: Trouble,
        *,
        understood: str = "",
        rest: str = "",
        known: tuple[str, ...] = (),
    ) -> None:
        self.reason = reason
        self.understood = understood
        self.rest = rest
        self.known = known
        super().__init__(
            _SENTENCES[reason].format(
                understood=understood, rest=rest, known=", ".join(known)
            )
        )
