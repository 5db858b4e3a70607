"""The way of one lot with its drawing, the lots one can pick, and balances."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from itertools import groupby
from typing import Any

from farm.models import Farm
from farm.units import System
from reports.calc.rules import findings
from reports.calc.shapes.basics import Span
from reports.calc.shapes.dossier import Dossier
from reports.calc.shapes.ledger import Ending
from reports.calc.shapes.rules import Rule, RuleId, Severity
from reports.calc.shapes.trace import Balance, Link, Missing, Stop, Trace
from reports.calc.trace import balances, startable, trace
from reports.drawings.path import trace_path
from reports.labels import label
from reports.labels.rules import sentence
from reports.ledger.dossier import dossier
from reports.ledger.dossier.days import newest, open_to, years_of
from reports.ledger.ruling import rules_of
from reports.papers.stops import places

MOST_LISTED = 100


@dataclass(frozen=True)
class StopLine:
    """One stop as a table prints it, with what is missing there."""

    stop: Stop
    name: str
    missing: tuple[Missing, ...]
    field: str = ""
    amount: str = ""


@dataclass(frozen=True)
class Pick:
    """A lot that a way can begin with, told apart from others of its name."""

    stop: Stop
    name: str


@dataclass(frozen=True)
class Choice:
    """Lots of one sort that a way can begin with."""

    link: Link
    picks: tuple[Pick, ...]
    left_out: int


def choice_paper(farm: Farm, *, today: dt.date, words: str = "") -> dict[str, Any]:
    """Every lot one can pick, narrowed by words."""
    season = Span(*farm.season(farm.season_year(newest(farm, today=today))))
    books = dossier(farm, season, today=today)
    asked = words.casefold().strip()
    told = [one for one in _picks(books) if asked in one.name.casefold()]
    opened = open_to(farm, {one.stop.noun for one in told})
    if opened is not None:
        told = [one for one in told if one.stop.key in opened]
    choices = [
        _choice(link, list(rows))
        for link, rows in groupby(told, key=lambda one: one.stop.link)
    ]
    return {"farm": farm, "choices": choices, "words": words}


def trace_paper(
    farm: Farm, noun: str, pk: int, *, today: dt.date
) -> dict[str, Any] | None:
    """The way of one lot, or None where the farm has no such lot."""
    years = years_of(farm, noun, pk, today=today)
    if years is None:
        return None
    books = dossier(farm, years, today=today)
    told = trace(books, noun, pk)
    if told is None:
        return None
    page = {
        "farm": farm,
        "printed_on": today,
        **trace_part(told, books, System(farm.units)),
    }
    return {**page, **_asked(farm, told, books, rules_of(farm, years))}


def _asked(
    farm: Farm, told: Trace, books: Dossier, rules: tuple[Rule, ...]
) -> dict[str, Any]:
    """What the checks ask about at the stops of a way, and whether it stops a lot."""
    stops = {stop.key for stop in told.stops}
    along = tuple(
        (one, sentence(one, System(farm.units)))
        for one in findings(books, rules)
        if (one.found.noun, one.found.record) in stops
    )
    return {
        "along": along,
        "is_stopped": any(one.severity is Severity.STOP for one, _words in along),
    }


def trace_part(told: Trace, books: Dossier, system: System) -> dict[str, Any]:
    """A way as a drawing and a table."""
    known = places(books, {stop.key for stop in told.stops}, system)
    missing: dict[tuple[str, int], list[Missing]] = {}
    for gap in told.gaps:
        missing.setdefault(gap.at.key, []).append(gap.missing)
    return {
        "trace": told,
        "drawing": trace_path(told, ident=f"way-{told.start.noun}-{told.start.id}"),
        "lines": tuple(
            StopLine(
                stop,
                _name(stop),
                tuple(missing.get(stop.key, ())),
                *known.get(stop.key, ("", "")),
            )
            for stop in told.stops
        ),
    }


def balance_paper(farm: Farm, period: Span, *, today: dt.date) -> dict[str, Any]:
    """Seed and harvest lots handled in a period, those that do not add up first."""
    books = dossier(farm, period, today=today)
    rules = rules_of(farm, period)
    return {"farm": farm, "period": period, **balance_part(books, period, rules)}


def balance_part(books: Dossier, period: Span, rules: Iterable[Rule]) -> dict[str, Any]:
    """Balances with the tolerances they were held against."""
    stock = next(rule for rule in rules if rule.id is RuleId.STOCK)
    shares = {key: stock[key] for key in ("packed_share", "bulk_share")}
    told = balances(books, period, **shares)
    rows = tuple(sorted(told, key=_doubtful_first))
    return {
        "balances": rows,
        "off": tuple(one for one in rows if not one.is_within),
        "closed": tuple(one for one in rows if one.is_within),
        "short": sum(not one.is_within for one in told),
        **shares,
    }


def _picks(books: Dossier) -> Iterator[Pick]:
    """Lots to pick: a buyer with what was bought."""
    lots = {one.id: f"{one.code} {one.crop}" for one in books.crops}
    more = {("sales", one.id): lots.get(one.lot_id) for one in books.gone}
    for stop in startable(books):
        about = more.get(stop.key)
        yield Pick(stop, f"{stop.name}, {about}" if about else stop.name)


def _choice(link: Link, picks: list[Pick]) -> Choice:
    shown = tuple(picks[:MOST_LISTED])
    return Choice(link, shown, len(picks) - len(shown))


def _doubtful_first(one: Balance) -> tuple[bool, str, str]:
    return one.is_within, one.goods, one.name


def _name(stop: Stop) -> str:
    return label(Ending(stop.name)) if stop.link is Link.ENDED else stop.name
