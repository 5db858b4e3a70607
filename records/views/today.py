"""What stands on the farm today: a page, or a fragment of the farm's."""

from __future__ import annotations

from django.http import HttpResponse
from django.shortcuts import render
from django.utils import timezone
from django.views.decorators.http import require_GET

from farm.access import FarmRequest, for_members
from farm.models import Farm
from records.models import Planting

MOST_SHOWN = 60


@require_GET
@for_members()
def standing_today(request: FarmRequest, farm: Farm) -> HttpResponse:
    today = farm.today(timezone.now())
    rows = (
        Planting.objects.on(farm)
        .live()
        .standing(today)
        .select_related("field")
        .prefetch_related("lines__kind")
        .order_by("field__name", "pk")
    )
    page = {"farm": farm, "plantings": rows[:MOST_SHOWN], "today": today}
    name = "_standing" if request.htmx else "standing"
    return render(request, f"records/{name}.html", page)
