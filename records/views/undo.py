"""Putting a voided record or attachment back, at one press."""

from __future__ import annotations

from uuid import UUID

from django.contrib import messages
from django.core.exceptions import PermissionDenied
from django.http import HttpResponse
from django.shortcuts import redirect
from django.utils import timezone
from django.utils.translation import gettext as _
from django.views.decorators.http import require_POST

from farm.access import WRITERS, FarmRequest, for_members, let
from farm.models import Farm, Record
from records import undoing
from records.nouns import BY_MODEL
from records.views.attachments import found
from records.views.pages import noun_named, one


@require_POST
@for_members()
def record_undo(request: FarmRequest, farm: Farm, noun: str, pk: int) -> HttpResponse:
    named = noun_named(noun)
    let(request, named.writers)
    row = one(farm, named, pk)
    if row.voided_at:
        put_back(request, row, _("Put back. The record stands again."))
    return redirect("records:page", farm.slug, named.slug, row.pk)


@require_POST
@for_members(*WRITERS)
def attachment_undo(request: FarmRequest, farm: Farm, attachment: UUID) -> HttpResponse:
    """A picture or paper put back beside its record, which must stand itself."""
    kept = found(request, farm, attachment)
    noun = BY_MODEL[kept.noun]
    row = one(farm, noun, kept.object_id)
    if kept.voided_at and row.voided_at:
        messages.error(request, undoing.LEANS % {"what": row})
    elif kept.voided_at:
        put_back(request, kept, _("Put back. It stands with the record again."))
    return redirect("records:page", farm.slug, noun.slug, row.pk)


def put_back(request: FarmRequest, row: Record, done: str) -> None:
    now = timezone.now()
    if not undoing.may_undo(row, by=request.membership, now=now):
        raise PermissionDenied
    trouble = undoing.undo(row, by=request.user, now=now)
    if trouble:
        messages.error(request, trouble)
    else:
        messages.success(request, done)
