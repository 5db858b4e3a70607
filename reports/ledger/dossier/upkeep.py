"""Clean-outs, mishaps, training, reviews, papers, and the people of the farm."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import Any

from farm.models import Change, Farm, Membership, Role
from records.models import Attachment, CleanOut, Duty, Equipment, Incident, Training
from records.nouns import BY_MODEL
from reports.calc.shapes.books import Cleaned, Mishap, Task, Trained
from reports.ledger.dossier.reading import Reading

SETTLING = (Change.Verb.REVIEWED, Change.Verb.CHANGED)


def told(reading: Reading) -> dict[str, Any]:
    """Eight queries: what keeps the books straight, and who keeps them."""
    cleaned = []
    for row in reading.dated(CleanOut).select_related("equipment"):
        cleaned.append(_cleaned(row))
        reading.note(row, row.equipment.name)
    mishaps = []
    for row in reading.dated(Incident):
        mishaps.append(_mishap(row))
        reading.note(row, row.get_what_display(), row.field_id)
    trained = []
    for row in reading.dated(Training):
        trained.append(_trained(row))
        reading.note(row, f"{row.person}, {row.topic}")
    members = list(reading.farm.memberships.select_related("user"))
    return {
        "machines": tuple(reading.live(Equipment).values_list("name", flat=True)),
        "cleaned": tuple(cleaned),
        "mishaps": tuple(mishaps),
        "trained": tuple(trained),
        "people": frozenset(one.user.name for one in members if one.user.name),
        "exempt": _exempt(reading.farm, members),
        "tasks": tuple(_tasks(reading)),
        "reviewed": _reviewed(reading),
        "documents": _documents(reading),
    }


def _exempt(farm: Farm, members: Iterable[Membership]) -> frozenset[str]:
    """The owners, and the family as the farm names it."""
    owners = (str(one.user) for one in members if one.role == Role.OWNER)
    family = (name.strip() for name in farm.family.splitlines())
    return frozenset(filter(None, (farm.operator, *owners, *family)))


def _tasks(reading: Reading) -> Iterator[Task]:
    """Work given to somebody by name that nothing has settled."""
    rows = Duty.objects.on(reading.farm).open().exclude(who_for=None)
    rows = rows.filter(earliest_on__lte=reading.until).order_by("pk")
    told = ("pk", "field_id", "earliest_on", "latest_on", "who_for__name")
    yield from (Task(*row) for row in rows.values_list(*told))


def _cleaned(row: CleanOut) -> Cleaned:
    return Cleaned(
        id=row.pk,
        machine=row.equipment.name,
        on=row.cleaned_on,
        held_before=row.held_before,
        method=row.method,
        done_by=row.done_by,
    )


def _trained(row: Training) -> Trained:
    return Trained(
        id=row.pk,
        on=row.trained_on,
        person=row.person,
        topic=row.topic,
        trainer=row.trainer,
        until=row.valid_until,
        subject=row.subject,
    )


def _mishap(row: Incident) -> Mishap:
    return Mishap(
        id=row.pk,
        field_id=row.field_id,
        what=row.what,
        on=row.noticed_on,
        done_about_it=row.done_about_it,
        told_to=row.told_to,
        account=row.account,
    )


def _reviewed(reading: Reading) -> frozenset[tuple[str, int]]:
    """Records looked over and not changed since."""
    rows = Change.objects.filter(farm=reading.farm, verb__in=SETTLING)
    stands: dict[tuple[str, int], bool] = {}
    told = rows.order_by("number").values_list("noun", "object_id", "verb")
    for noun, pk, verb in told:
        stands[noun, pk] = verb == Change.Verb.REVIEWED
    return frozenset(
        (BY_MODEL[noun].slug, pk)
        for (noun, pk), still in stands.items()
        if still and noun in BY_MODEL
    )


def _documents(reading: Reading) -> frozenset[tuple[str, int]]:
    """Records that a paper or picture belongs to."""
    rows = reading.live(Attachment).values_list("noun", "object_id")
    return frozenset((BY_MODEL[noun].slug, pk) for noun, pk in rows if noun in BY_MODEL)
