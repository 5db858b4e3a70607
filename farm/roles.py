"""Who may see and do what: the one table, for the door, the forms and the page."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from django.utils.translation import gettext_lazy as _

from farm.models import Role

EVERYONE = frozenset(Role)
WRITERS = frozenset({Role.OWNER, Role.MANAGER, Role.CREW})
MANAGERS = frozenset({Role.OWNER, Role.MANAGER})
OWNERS = frozenset({Role.OWNER})
# Who reads licences, addresses and the papers that print them.
PRIVY = MANAGERS | {Role.INSPECTOR}
# What an inspector may open; nothing else opens.
INSPECTED = frozenset(
    {
        "farm",
        "leave",
        "records:attachment",
        "records:attachment-small",
        "records:changes",
        "records:list",
        "records:page",
        "records:table-csv",
        "records:table-xlsx",
        "reports:assumptions",
        "reports:balances",
        "reports:changes-now",
        "reports:changes-since",
        "reports:field",
        "reports:findings",
        "reports:findings-now",
        "reports:map",
        "reports:packet",
        "reports:packet-pdf",
        "reports:print",
        "reports:print-begin",
        "reports:print-file",
        "reports:print-stop",
        "reports:prints",
        "reports:rules",
        "reports:season",
        "reports:season-pdf",
        "reports:seasons",
        "reports:sources",
        "reports:trace",
        "reports:trace-choose",
        "reports:verify",
    }
)


@dataclass(frozen=True)
class Right:
    """Something that may be done, by whom, and an address that shows it."""

    words: Any
    roles: frozenset[Role]
    address: str


RIGHTS = (
    Right(_("See fields, records and papers"), EVERYONE, "farm"),
    Right(_("See who changed what, and when"), EVERYONE, "records:changes"),
    Right(_("Leave the farm"), EVERYONE, "leave"),
    Right(
        _("Read licences, addresses and the papers for certification"),
        PRIVY,
        "reports:packet",
    ),
    Right(_("See who is on the farm, and the plans"), WRITERS, "people"),
    Right(
        _("Write down sowing, cutting, spraying, harvest, stock and what was seen"),
        WRITERS,
        "records:write",
    ),
    Right(_("Add pictures and papers to records"), WRITERS, "records:attach"),
    Right(_("Plan the season"), WRITERS, "records:plan"),
    Right(
        _("Write fields, seed lots, weather and figures of the farm’s own"),
        MANAGERS,
        "records:own-figure",
    ),
    Right(_("Look records over"), MANAGERS, "records:review"),
    Right(_("Read in tables and weather files"), MANAGERS, "records:weather-load"),
    Right(_("Change the farm’s own page"), MANAGERS, "farm-edit"),
    Right(_("Invite people, change their roles, end their access"), OWNERS, "invite"),
    Right(_("Hand the farm over to another owner"), OWNERS, "hand-over"),
    Right(_("Take the whole farm away in one file"), OWNERS, "records:archive"),
)


def table() -> list[tuple[Any, list[tuple[Any, bool]]]]:
    """Each right with a yes or no for every role, in the order of the roles."""
    return [
        (right.words, [(role.label, role in right.roles) for role in Role])
        for right in RIGHTS
    ]
