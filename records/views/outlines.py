"""The outlines of a farm's fields, for whatever else draws maps."""

from __future__ import annotations

from django.http import HttpResponse, JsonResponse
from django.views.decorators.http import require_GET

from farm.access import FarmRequest, for_members
from farm.models import Farm
from records.geojson import collection


@require_GET
@for_members()
def field_outlines(request: FarmRequest, farm: Farm) -> HttpResponse:
    fields = farm.fields.live().exclude(outline=None).order_by("name", "pk")
    name = f'attachment; filename="{farm.slug}-fields.geojson"'
    return JsonResponse(
        collection(fields),
        content_type="application/geo+json",
        headers={"Content-Disposition": name},
    )
