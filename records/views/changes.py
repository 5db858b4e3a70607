"""Everything that was written, changed or voided, the latest first."""

from __future__ import annotations

from django.core.paginator import Paginator
from django.db.models import Q
from django.http import HttpResponse
from django.shortcuts import render
from django.views.decorators.http import require_GET

from farm.access import FarmRequest, for_members
from farm.models import Farm
from records.filters.changes import ChangeFilter
from records.models import Attachment
from records.nouns import closed_to

ROWS_A_PAGE = 50


@require_GET
@for_members()
def change_list(request: FarmRequest, farm: Farm) -> HttpResponse:
    rows = farm.changes.select_related("by").order_by("-number")
    rows = rows.exclude(about(closed_to(request.membership.role), farm))
    if farm.period is not None:
        rows = rows.filter(at__date__range=farm.period)
    narrowed = ChangeFilter(request.GET, farm=farm, queryset=rows)
    page = {
        "farm": farm,
        "filter": narrowed,
        "filtered": any(request.GET.get(name) for name in narrowed.form.fields),
        "page_obj": Paginator(narrowed.qs, ROWS_A_PAGE).get_page(
            request.GET.get("page")
        ),
    }
    return render(request, "records/changes.html", page)


def about(nouns: list[str], farm: Farm) -> Q:
    """Changes of these records and of the papers kept with them."""
    papers = Attachment.objects.on(farm).filter(noun__in=nouns).values("pk")
    return Q(noun__in=nouns) | Q(noun="attachment", object_id__in=papers)
