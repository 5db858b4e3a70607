"""Write down on one page: as a page, or as an entry that waited on a telephone."""

from __future__ import annotations

import uuid
from typing import Any

from django.contrib import messages
from django.http import HttpResponse, JsonResponse
from django.shortcuts import redirect, render
from django.utils import timezone
from django.views.decorators.http import require_http_methods

from farm.access import WRITERS, FarmRequest, for_members, let
from farm.models import Farm
from records import acts
from records.acts import Act
from records.acts.entry import Entry, blank, typed_again
from records.acts.sending import Answer, send
from records.views.write import act_named

REFUSED = 422


@require_http_methods(["GET", "HEAD", "POST"])
@for_members(*WRITERS)
def crew_act(request: FarmRequest, farm: Farm, act: str) -> HttpResponse:
    named = act_named(act)
    let(request, named.noun.writers)
    if request.method != "POST":
        return shown(request, farm, page_of(request, farm, named))
    answer = taken(request, farm, named)
    if request.headers.get("Accept") == "application/json":
        status = 200 if answer.is_taken else REFUSED
        told = {"words": answer.words, "errors": answer.errors}
        return JsonResponse(told, status=status)
    if answer.is_taken:
        messages.success(request, answer.words)
        return redirect("crew:today", farm.slug)
    entry = typed_again(page_of(request, farm, named), request.POST, answer.sheet)
    return shown(request, farm, entry, errors=answer.errors)


def taken(request: FarmRequest, farm: Farm, act: Act) -> Answer:
    return send(
        act,
        farm,
        request.POST,
        request.FILES,
        key=key_of(request),
        by=request.user,
        now=timezone.now(),
    )


def key_of(request: FarmRequest) -> uuid.UUID:
    try:
        return uuid.UUID(request.POST.get("key", ""))
    except ValueError:
        return uuid.uuid4()


def page_of(request: FarmRequest, farm: Farm, act: Act) -> Entry:
    today = farm.today(timezone.now())
    guess = acts.last_values(act, farm, request.user)
    guess |= {"done_by": str(request.user), act.noun.model.DATE_FIELD: today}
    guess |= {name: text for name, text in request.GET.items() if name != "place"}
    found = acts.places(act, farm, today=today)
    return blank(act, farm, found, options={"today": today, "initial": guess})


def shown(
    request: FarmRequest, farm: Farm, entry: Entry, *, errors: Any = ()
) -> HttpResponse:
    sent = request.POST if request.method == "POST" else request.GET
    page = {
        "farm": farm,
        "act": entry.act,
        "entry": entry,
        "asked": set(sent.getlist("place")),
        "errors": errors,
        "key": request.POST.get("key") or uuid.uuid4(),
    }
    return render(request, "records/crew_act.html", page)
