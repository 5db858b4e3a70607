"""The one door: a farm's short name and a person make a farm, by role."""

from __future__ import annotations

import functools
from collections.abc import Callable
from typing import Any, Concatenate, ParamSpec

from django.core.exceptions import PermissionDenied
from django.http import Http404, HttpRequest, HttpResponseBase
from django.utils import timezone

from farm.models import Farm, Look, Membership, Role, User
from farm.roles import EVERYONE, INSPECTED, MANAGERS, OWNERS, PRIVY, WRITERS

P = ParamSpec("P")

LONGEST_PATH = 300


class FarmRequest(HttpRequest):
    """A request that came through the door."""

    user: User
    membership: Membership
    htmx: Any


View = Callable[Concatenate[FarmRequest, Farm, P], HttpResponseBase]
Routed = Callable[..., HttpResponseBase]


def for_members(*roles: Role) -> Callable[[View[P]], Routed]:
    """Let in members of the farm in the address; a stranger finds nothing there.

    With ``roles`` given, another role is refused. Visitors never come this far:
    the middleware has sent them to sign in.
    """
    allowed = frozenset(roles) or EVERYONE

    def door(view: View[P]) -> Routed:
        @functools.wraps(view)
        def through(
            request: FarmRequest, slug: str, *args: P.args, **kwargs: P.kwargs
        ) -> HttpResponseBase:
            membership = _membership(request.user, slug)
            request.membership = membership
            let(request, allowed)
            farm = membership.farm.read_in(request.user.units)
            farm.period = membership.period
            farm.is_read_by_crew = membership.role == Role.CREW
            _keep_to_the_period(request, farm)
            _note(request)
            with timezone.override(farm.time_zone):
                return view(request, farm, *args, **kwargs)

        through.door = allowed  # type: ignore[attr-defined]
        return through

    return door


def let(request: FarmRequest, roles: frozenset[Role]) -> None:
    """Refuse a member whose role is not among these."""
    if request.membership.role not in roles:
        raise PermissionDenied


def may(request: FarmRequest, roles: frozenset[Role]) -> bool:
    """Tell whether the member's role is among these."""
    return request.membership.role in roles


def _keep_to_the_period(request: FarmRequest, farm: Farm) -> None:
    """An inspector reads the pages opened to them, of seasons within their days."""
    match = request.resolver_match
    if farm.period is None or match is None:
        return
    if match.view_name not in INSPECTED:
        raise PermissionDenied
    year = match.kwargs.get("year")
    if year is not None and not farm.opens(year):
        raise Http404


def _note(request: FarmRequest) -> None:
    """Every look of an inspector is noted."""
    membership = request.membership
    if membership.role == Role.INSPECTOR:
        Look.objects.create(
            farm=membership.farm,
            by=request.user,
            at=timezone.now(),
            path=request.get_full_path()[:LONGEST_PATH],
        )


def _membership(user: User, slug: str) -> Membership:
    rows = Membership.objects.filter(user=user, farm__slug=slug)
    found = rows.select_related("farm").first()
    if found is None or not found.holds_on(found.farm.today(timezone.now())):
        raise Http404
    return found


__all__ = [
    "EVERYONE",
    "MANAGERS",
    "OWNERS",
    "PRIVY",
    "WRITERS",
    "FarmRequest",
    "for_members",
    "let",
    "may",
]
