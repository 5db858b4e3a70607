"""The crew's page."""

from __future__ import annotations

from django.http import HttpResponse
from django.shortcuts import render
from django.utils import timezone
from django.views.decorators.http import require_GET

from farm.access import WRITERS, FarmRequest, for_members, may
from farm.models import Farm
from reports.papers.crew import crew_paper


@require_GET
@for_members()
def today(request: FarmRequest, farm: Farm) -> HttpResponse:
    page = crew_paper(farm, request.user, now=timezone.now())
    page["may_write"] = may(request, WRITERS)
    return render(request, "reports/crew.html", page)
