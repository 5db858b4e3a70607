"""Every address of the program, found by walking, and filled with what the cast has."""

from dataclasses import dataclass, replace
from typing import Any

from django.core.files.base import ContentFile
from django.core.files.storage import default_storage
from django.urls import get_resolver, reverse

from farm.models import Role
from farm.models.invitations import sealed
from records.acts import ACTS
from records.models import Attachment, PrintJob
from records.nouns import NOUNS
from tests.factories import (
    AttachmentFactory,
    InvitationFactory,
    MembershipFactory,
    PrintJobFactory,
)

YEAR = 2026
# Whose number stands in an address that is about one noun only.
NUMBERS = {
    "reports:field": "fields",
    "reports:trace": "seed-lots",
    "records:station-days": "stations",
    "records:station-workbook": "stations",
    "reports:order": "seed-orders",
    "reports:order-pdf": "seed-orders",
    "reports:order-csv": "seed-orders",
}
# What an address must also be asked for, to mean something.
QUERIES = {"records:own-figure": "?figure=dry_matter"}


@dataclass(frozen=True)
class Address:
    """One address, for one noun where it serves several."""

    name: str
    path: str
    view: Any
    blanks: tuple[str, ...]
    noun: str = ""
    act: str = ""

    def __str__(self):
        return f"{self.name} {self.noun}{self.act}".strip()

    @property
    def is_of_a_farm(self):
        return "slug" in self.blanks

    @property
    def names_a_record(self):
        named = {"pk", "kind", "attachment", "planting", "member", "invitation"}
        return bool((named | {"key"}) & set(self.blanks))

    def at(self, household, *, under=None):
        """The address with a farm's own records in it, under this farm's name."""
        noun = self.noun or NUMBERS.get(self.name)
        told = {
            "slug": lambda: (under or household).farm.slug,
            "noun": lambda: self.noun,
            "act": lambda: self.act,
            "attachment": lambda: attachment_of(household),
            "token": lambda: token_of(household),
            "member": lambda: member_of(household).pk,
            "invitation": lambda: invitation_of(household).pk,
            "uidb64": lambda: "MQ",
            "kind": lambda: household.kind.slug,
            "planting": lambda: household["plantings"].pk,
            "pk": lambda: household[noun].pk,
            "year": lambda: YEAR,
            "of": lambda: "seed-lots",
            "paper": lambda: "packet",
            "key": lambda: print_of(household),
        }
        unknown = set(self.blanks) - set(told)
        if unknown or ("pk" in self.blanks and not noun):
            raise LookupError(f"{self.path}: say here what stands at {unknown or 'pk'}")
        filled = {blank: told[blank]() for blank in self.blanks}
        return reverse(self.name, kwargs=filled) + QUERIES.get(self.name, "")


def attachment_of(household):
    """A paper of the farm's, kept when it is first asked for."""
    found = Attachment.objects.on(household.farm).first()
    return (found or AttachmentFactory(farm=household.farm)).client_key


def member_of(household):
    """Somebody of the farm beside the cast, so that the cast stays whole."""
    found = household.farm.memberships.filter(user__name="Hand").first()
    return found or MembershipFactory(
        farm=household.farm, user__name="Hand", role=Role.CREW
    )


def token_of(household):
    """What opens the farm's invitation."""
    invitation_of(household)
    return token_in(household)


def token_in(household):
    return f"token-of-{household.farm.slug}"


def invitation_of(household):
    """A link to the farm, opened by the token that stands in addresses."""
    found = household.farm.invitations.first()
    told = {"farm": household.farm, "token_hash": sealed(token_in(household))}
    return found or InvitationFactory(**told)


def print_of(household):
    """A finished print of the farm's, with its file."""
    found = PrintJob.objects.filter(farm=household.farm).first()
    if found is None:
        found = PrintJobFactory(farm=household.farm, state="done")
        default_storage.save(found.file, ContentFile(b"%PDF-1.7"))
    return found.key


def walked(resolver=None, path="", space="", blanks=()):
    for part in (resolver or get_resolver()).url_patterns:
        here = path + str(part.pattern)
        found = (*blanks, *part.pattern.converters)
        if hasattr(part, "url_patterns"):
            inner = f"{space}{part.namespace}:" if part.namespace else space
            yield from walked(part, here, inner, found)
        else:
            yield Address(f"{space}{part.name}", here, part.callback, found)


def addresses():
    """Every address, once for every noun it may be about."""
    for one in walked():
        if "noun" in one.blanks:
            yield from (replace(one, noun=noun.slug) for noun in NOUNS)
        elif "act" in one.blanks:
            yield from (replace(one, act=act.slug) for act in ACTS)
        else:
            yield one
