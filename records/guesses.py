"""What stands in a form before anybody types: what was asked for, and first guesses."""

from __future__ import annotations

import datetime as dt
from typing import Any

from django.utils import timezone

from farm.access import FarmRequest
from farm.models import Farm, Record
from records.forms import FarmFigureForm
from records.models import FarmFigure, MulchSheet, Planting, SeedLot
from records.nouns import Noun
from records.receiving import lot_guess

# What a comparison hands over to the form that writes the choice down.
CHOSEN = ("residue", "reason", "outcome")
GUESSED = ("field", "planting", "product", "kind", "lot", "seed_lot", "equipment")


def form_for(
    noun: Noun,
    row: Record,
    data: Any,
    *,
    today: dt.date,
    files: Any = None,
    initial: Any = None,
) -> Any:
    if isinstance(row, FarmFigure):
        return FarmFigureForm(
            data, farm=row.farm, today=today, instance=row, kind=row.kind
        )
    return noun.form(
        data, files=files, farm=row.farm, today=today, instance=row, initial=initial
    )


def day_meant(request: FarmRequest, today: dt.date) -> dt.date:
    """The day the page that led here was looked at from, else today."""
    try:
        return min(dt.date.fromisoformat(request.GET.get("on", "")), today)
    except ValueError:
        return today


def now_done(row: Record, request: FarmRequest, today: dt.date) -> dict[str, Any]:
    """The day of what the link that led here says was done: sown, or taken off."""
    planned = isinstance(row, Planting) and row.sown_on is None
    lies = isinstance(row, MulchSheet) and row.lies
    if planned and request.GET.get("do") == "sow":
        return {"sown_on": day_meant(request, today), "done_by": str(request.user)}
    if lies and request.GET.get("do") == "off":
        return {"taken_off_on": day_meant(request, today)}
    return {}


def first_guess(noun: Noun, farm: Farm, request: FarmRequest) -> dict[str, Any]:
    """Today, the writer's own name, and whatever the link that led here named."""
    today = farm.today(timezone.now())
    guess: dict[str, Any] = {"done_by": str(request.user)}
    if noun.model.DATE_FIELD:
        guess[noun.model.DATE_FIELD] = day_meant(request, today)
    for name in GUESSED:
        asked = request.GET.get(name, "")
        if asked.isdigit():
            guess[name] = int(asked)
    if noun.model is SeedLot:
        order, line = (request.GET.get(name, "") for name in ("order", "line"))
        guess |= lot_guess(farm, order, line)
    guess |= {name: told for name in CHOSEN if (told := request.GET.get(name))}
    if noun.begins_with:
        guess |= request.GET.dict()
    return guess
