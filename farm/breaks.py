"""Where a chain of changes breaks, in words."""

from __future__ import annotations

from django.utils.translation import gettext as _
from django.utils.translation import gettext_lazy

from farm.chain import Break, Flaw

SENTENCES = {
    Flaw.MISSING: gettext_lazy(
        "entry %(number)s is missing: number %(found)s stands in its place."
    ),
    Flaw.OTHER_BEFORE: gettext_lazy(
        "entry %(number)s does not follow the one before it: "
        "it names %(found)s, the one before it is %(expected)s."
    ),
    Flaw.REWRITTEN: gettext_lazy(
        "entry %(number)s is not as it was sealed: "
        "its seal is %(expected)s, its words call for %(found)s."
    ),
    Flaw.CUT_OFF: gettext_lazy(
        "entry %(number)s is missing: %(expected)s were written, %(found)s stand."
    ),
    Flaw.NOT_COUNTED: gettext_lazy(
        "entry %(number)s was added past the writer: "
        "%(expected)s were written, %(found)s stand."
    ),
}


def told(flaw: Break) -> str:
    return str(SENTENCES[flaw.flaw]) % {
        "number": flaw.number,
        "expected": flaw.expected or _("nothing"),
        "found": flaw.found or _("nothing"),
    }
