"""Clean-outs, mishaps, training, reviews, papers, and the people of the farm."""

from __future__ import annotations

from typing import Any

from farm.models import Change
from records.models import Attachment, CleanOut, Equipment, Incident, Training
from records.nouns import BY_MODEL
from reports.calc.shapes.books import Cleaned, Mishap, Trained
from reports.ledger.dossier.reading import Reading

SETTLING = (Change.Verb.REVIEWED, Change.Verb.CHANGED)


def told(reading: Reading) -> dict[str, Any]:
    """Seven queries: what keeps the books straight, and who keeps them."""
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
    members = reading.farm.memberships.values_list("user__name", flat=True)
    return {
        "machines": tuple(reading.live(Equipment).values_list("name", flat=True)),
        "cleaned": tuple(cleaned),
        "mishaps": tuple(mishaps),
        "trained": tuple(trained),
        "people": frozenset(name for name in members if name),
        "reviewed": _reviewed(reading),
        "documents": _documents(reading),
    }


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
