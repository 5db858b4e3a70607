"""What the numbers of rules are called, as the records that overrule them say it."""

from records.rules_called import NUMBERED, NUMBERS, SETS, number_said

__all__ = ["NUMBERED", "NUMBERS", "SETS", "number_said"]
