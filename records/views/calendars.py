"""A person's duties as a calendar, under a private address that can be revoked."""

from __future__ import annotations

from django.contrib import messages
from django.contrib.auth.decorators import login_not_required
from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.urls import reverse
from django.utils import timezone
from django.utils.translation import get_language, override
from django.utils.translation import gettext as _
from django.views.decorators.cache import never_cache
from django.views.decorators.http import require_GET, require_http_methods

from farm.access import FarmRequest, for_members
from farm.language import of_person
from farm.models import Farm
from records.feeds import Event, calendar
from records.models import CalendarAddress, Duty


@require_GET
@login_not_required
@never_cache
def calendar_feed(request: HttpRequest, token: str) -> HttpResponse:
    """The calendar behind a token; whoever knows the address may read it."""
    found = CalendarAddress.objects.known_by(token, now=timezone.now())
    if found is None:
        raise Http404
    rows = Duty.objects.on(found.farm).open().for_person(found.user)
    rows = rows.select_related("field").order_by("latest_on", "pk")
    with override(of_person(found.user, otherwise=get_language() or "")):
        name = _("Duties on %(farm)s") % {"farm": found.farm.name}
        told = calendar(name, map(event_of, rows))
    return HttpResponse(told, "text/calendar; charset=utf-8")


@require_http_methods(["GET", "HEAD", "POST"])
@for_members()
def calendar_page(request: FarmRequest, farm: Farm) -> HttpResponse:
    """Make an address, or a new one in its place; the token is shown only here."""
    address = None
    if request.method == "POST":
        token = CalendarAddress.renewed(farm, request.user, now=timezone.now())
        address = request.build_absolute_uri(reverse("calendar-feed", args=[token]))
    mine = CalendarAddress.objects.live().filter(farm=farm, user=request.user)
    page = {"farm": farm, "address": address, "mine": mine.first()}
    return render(request, "records/calendar.html", page)


@require_http_methods(["POST"])
@for_members()
def calendar_revoke(request: FarmRequest, farm: Farm) -> HttpResponse:
    CalendarAddress.revoke(farm, request.user, now=timezone.now())
    messages.success(request, _("The address opens nothing any more."))
    return redirect("records:calendar", farm.slug)


def event_of(duty: Duty) -> Event:
    return Event(
        key=f"{duty.client_key}@duties",
        title=str(duty),
        first=duty.earliest_on,
        last=duty.latest_on,
        written_at=duty.written_at,
        words=duty.notes,
    )
