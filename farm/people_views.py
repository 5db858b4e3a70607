"""The people of a farm: who may do what, invitations, and parting."""

from __future__ import annotations

import datetime as dt

from django.conf import settings
from django.contrib import messages
from django.contrib.auth.tokens import default_token_generator
from django.core.paginator import Paginator
from django.http import HttpResponse
from django.shortcuts import get_object_or_404, redirect, render
from django.urls import reverse
from django.utils import timezone
from django.utils.encoding import force_bytes
from django.utils.http import urlsafe_base64_encode
from django.utils.translation import gettext as _
from django.views.decorators.http import require_GET, require_http_methods, require_POST

from farm import letters, roles, sharing
from farm.access import OWNERS, WRITERS, FarmRequest, for_members, may
from farm.forms import MemberForm, PersonForm
from farm.models import Farm, Invitation, Membership, Role

GET_OR_POST = ["GET", "HEAD", "POST"]
LOOKS_A_PAGE = 100


@require_GET
@for_members(*WRITERS)
def people(request: FarmRequest, farm: Farm) -> HttpResponse:
    now, owner = timezone.now(), may(request, OWNERS)
    members = farm.memberships.select_related("user").order_by("since", "pk")
    links = farm.invitations.filter(used_at=None).order_by("-made_at")
    page = {
        "farm": farm,
        "is_owner": owner,
        "rights": roles.table(),
        "roles": Role.choices,
        "mine": request.membership,
        "members": [(one, one.holds_on(farm.today(now))) for one in members],
        "looks": farm.looks.count() if owner else 0,
        "links": [(one, one.state(now)) for one in links] if owner else [],
    }
    return render(request, "farm/people.html", page)


@require_GET
@for_members(*OWNERS)
def looks(request: FarmRequest, farm: Farm) -> HttpResponse:
    """Who looked at which page, and when, the newest first."""
    rows = farm.looks.select_related("by").order_by("-at", "-pk")
    found = Paginator(rows, LOOKS_A_PAGE).get_page(request.GET.get("page"))
    return render(request, "farm/looks.html", {"farm": farm, "page_obj": found})


@require_http_methods(GET_OR_POST)
@for_members(*OWNERS)
def invite(request: FarmRequest, farm: Farm) -> HttpResponse:
    now = timezone.now()
    form = PersonForm(request.POST or None, farm=farm, today=farm.today(now))
    if request.method != "POST" or not form.is_valid():
        return render(request, "farm/invite.html", {"farm": farm, "form": form})
    made = sharing.invite(farm, by=request.user, now=now, **form.cleaned_data)
    link = request.build_absolute_uri(reverse("come-in", args=[made.token]))
    sent = letters.invitation(made.invitation, link)
    page = {"invitation": made.invitation, "link": link, "sent": sent}
    return render(request, "farm/invited.html", {"farm": farm, **page})


@require_POST
@for_members(*OWNERS)
def invitation_revoke(
    request: FarmRequest, farm: Farm, invitation: int
) -> HttpResponse:
    row = get_object_or_404(Invitation, pk=invitation, farm=farm)
    sharing.revoke(row, now=timezone.now())
    messages.success(request, _("The link opens nothing any more."))
    return redirect("people", farm.slug)


@require_http_methods(GET_OR_POST)
@for_members(*OWNERS)
def member(request: FarmRequest, farm: Farm, member: int) -> HttpResponse:
    one, today = found(farm, member), farm.today(timezone.now())
    form = MemberForm(request.POST or None, member=one, today=today)
    if request.method == "POST" and form.is_valid() and _changed(one, form, today):
        messages.success(request, _("Saved."))
        return redirect("people", farm.slug)
    page = {
        "farm": farm,
        "member": one,
        "form": form,
        "is_here": one.holds_on(today),
        "is_me": one.user_id == request.user.pk,
        "may_link": sharing.may_reset(one, by=request.user),
    }
    return render(request, "farm/member.html", page)


def _changed(one: Membership, form: MemberForm, today: dt.date) -> bool:
    try:
        sharing.change(one, today=today, **form.cleaned_data)
    except sharing.RefusalError as why:
        form.add_error("role", str(why))
        return False
    return True


@require_POST
@for_members(*OWNERS)
def member_end(request: FarmRequest, farm: Farm, member: int) -> HttpResponse:
    one = found(farm, member)
    return _parted(request, farm, one, after="people")


@require_POST
@for_members(*OWNERS)
def hand_over(request: FarmRequest, farm: Farm, member: int) -> HttpResponse:
    one = found(farm, member)
    try:
        today = farm.today(timezone.now())
        sharing.hand_over(request.membership, one, today=today)
        sentence = _("%(who)s owns the farm now; you are its manager.")
        messages.success(request, sentence % {"who": one.user})
    except sharing.RefusalError as why:
        messages.error(request, str(why))
    return redirect("people", farm.slug)


@require_POST
@for_members(*OWNERS)
def member_password(request: FarmRequest, farm: Farm, member: int) -> HttpResponse:
    one = found(farm, member)
    if not sharing.may_reset(one, by=request.user):
        messages.error(request, _("A link for this person cannot be made here."))
        return redirect("member", farm.slug, one.pk)
    uid = urlsafe_base64_encode(force_bytes(one.user_id))
    token = default_token_generator.make_token(one.user)
    path = reverse("password-new", args=[uid, token])
    page = {"farm": farm, "member": one, "link": request.build_absolute_uri(path)}
    page["hours"] = settings.PASSWORD_RESET_TIMEOUT // 3600
    return render(request, "farm/password_link.html", page)


@require_http_methods(GET_OR_POST)
@for_members()
def leave(request: FarmRequest, farm: Farm) -> HttpResponse:
    if request.method != "POST":
        return render(request, "farm/leave.html", {"farm": farm})
    return _parted(request, farm, request.membership, after="home")


def _parted(
    request: FarmRequest, farm: Farm, one: Membership, *, after: str
) -> HttpResponse:
    try:
        sharing.part(one, today=farm.today(timezone.now()))
    except sharing.RefusalError as why:
        messages.error(request, str(why))
        return redirect("people", farm.slug)
    sentence = _("%(who)s is no longer on %(farm)s. What was written stays.")
    messages.success(request, sentence % {"who": one.user, "farm": farm})
    return redirect("home") if after == "home" else redirect(after, farm.slug)


def found(farm: Farm, number: int) -> Membership:
    rows = Membership.objects.select_related("user", "farm")
    return get_object_or_404(rows, pk=number, farm=farm)
