"""Somebody looked a record over and says so."""

from __future__ import annotations

from django.contrib import messages
from django.http import HttpResponse
from django.shortcuts import redirect
from django.utils import timezone
from django.utils.translation import gettext as _
from django.views.decorators.http import require_POST

from farm.access import MANAGERS, FarmRequest, for_members
from farm.models import Farm
from records.lookovers import look_over
from records.views.pages import noun_named, one


@require_POST
@for_members(*MANAGERS)
def record_review(request: FarmRequest, farm: Farm, noun: str, pk: int) -> HttpResponse:
    named = noun_named(noun)
    row = one(farm, named, pk)
    look_over(row, by=request.user, now=timezone.now())
    messages.success(request, _("Noted as reviewed, with your name and the day."))
    return redirect("records:page", farm.slug, named.slug, row.pk)
