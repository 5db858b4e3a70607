"""Machines and stores cleaned between one use and the other."""

from __future__ import annotations

import datetime as dt
from collections import defaultdict
from collections.abc import Iterator

from reports.calc.rules.asked import ORGANIC
from reports.calc.shapes.dossier import Dossier
from reports.calc.shapes.rules import Found, Matter, Rule, Told

NOT_UNDER_RULES = {"not_organic", "buffer"}
Use = tuple[dt.date, bool, str, int]


def clean_out(books: Dossier, rule: Rule) -> Iterator[Found]:
    """Find organic use of a machine or store right after another, uncleaned."""
    cleaned: defaultdict[str, list[dt.date]] = defaultdict(list)
    for one in books.cleaned:
        cleaned[one.machine.casefold().strip()].append(one.on)
    for name, uses in _uses(books).items():
        dirty: dt.date | None = None
        for day, organic, noun, record in sorted(uses):
            if not organic:
                dirty = day
                continue
            if dirty is None or any(
                dirty <= on <= day for on in cleaned[name.casefold().strip()]
            ):
                dirty = None
                continue
            if day in books.season:
                told: Told = {"machine": name, "before": dirty, "day": day}
                yield Found(Matter.NOT_CLEANED, noun, record, day, values=told)
            dirty = None


def _uses(books: Dossier) -> dict[str, list[Use]]:
    """Uses of every machine and store named, by name: the day, whether organic."""
    found: defaultdict[str, list[Use]] = defaultdict(list)
    names = {name.casefold().strip(): name for name in books.machines}

    def use(word: str, day: dt.date, organic: bool, noun: str, record: int) -> None:
        name = names.get(word.casefold().strip())
        if name:
            found[name].append((day, organic, noun, record))

    for put in books.puts:
        use(put.equipment, put.on, _clean(books, put.field_id), "applications", put.id)
    for end in books.ends:
        stand = books.stand.get(end.stand_id)
        if stand is not None:
            organic = _clean(books, stand.field_id)
            use(end.tool, end.on, organic, "terminations", end.id)
    for kept in books.kept:
        crop = books.crop.get(kept.lot_id)
        if crop is not None:
            use(kept.place, kept.on, crop.status == ORGANIC, "storages", kept.id)
    return dict(found)


def _clean(books: Dossier, field_id: int) -> bool:
    ground = books.field.get(field_id)
    return ground is not None and ground.status not in NOT_UNDER_RULES
