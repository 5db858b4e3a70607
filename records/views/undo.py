"""Putting a voided record back, at one press."""

from __future__ import annotations

from django.contrib import messages
from django.core.exceptions import PermissionDenied
from django.http import HttpResponse
from django.shortcuts import redirect
from django.utils import timezone
from django.utils.translation import gettext as _
from django.views.decorators.http import require_POST

from farm.access import FarmRequest, for_members, let
from farm.models import Farm
from records import undoing
from records.views.pages import noun_named, one


@require_POST
@for_members()
def record_undo(request: FarmRequest, farm: Farm, noun: str, pk: int) -> HttpResponse:
    named = noun_named(noun)
    let(request, named.writers)
    row, now = one(farm, named, pk), timezone.now()
    if row.voided_at:
        if not undoing.may_undo(row, by=request.membership, now=now):
            raise PermissionDenied
        trouble = undoing.undo(row, by=request.user, now=now)
        if trouble:
            messages.error(request, trouble)
        else:
            messages.success(request, _("Put back. The record stands again."))
    return redirect("records:page", farm.slug, named.slug, row.pk)
