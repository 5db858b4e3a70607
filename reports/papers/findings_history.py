"""Findings over time: what came and what went from one kept list to the next."""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from farm.models import Farm, User
from reports.ledger.kept_findings import KeptFindings, Why, keep, kept
from reports.papers.findings import Group, findings_paper

Lines = Mapping[str, Mapping[str, str]]


@dataclass(frozen=True)
class Step:
    """One list as it stood, and what differs from the list before it.

    ``kept`` is None for the list of today.
    """

    kept: KeptFindings | None
    count: int
    came: tuple[str, ...]
    went: tuple[str, ...]
    is_first: bool


def lines_of(groups: tuple[Group, ...]) -> dict[str, dict[str, str]]:
    """Each finding by its key, with its weight and its sentence."""
    told = [line for group in groups for line in group.lines]
    return {
        line.finding.key: {"weight": str(line.finding.severity), "words": line.words}
        for line in sorted(told, key=lambda line: line.finding.key)
    }


def history_part(farm: Farm, year: int, groups: tuple[Group, ...]) -> dict[str, Any]:
    """Every kept list of a season and today's, the newest first."""
    rows = kept(farm, year)
    lists: list[Lines] = [*(row.lines for row in rows), lines_of(groups)]
    steps = [
        _step(row, lists[number - 1] if number else None, lists[number])
        for number, row in enumerate([*rows, None])
    ]
    return {"steps": tuple(reversed(steps)) if rows else ()}


def keep_findings(
    farm: Farm, year: int, *, today: dt.date, why: Why, by: User, now: dt.datetime
) -> KeptFindings:
    """Keep the list as it stands."""
    groups = findings_paper(farm, year, today=today)["groups"]
    return keep(farm, year, lines_of(groups), why=why, by=by, now=now)


def keep_printed(
    farm: Farm, year: int, paper: Mapping[str, Any], *, by: User, now: dt.datetime
) -> None:
    """Keep the list that a packet prints; a packet without it keeps none."""
    if "findings" in paper["chosen"]:
        keep(farm, year, lines_of(paper["groups"]), why=Why.PRINTED, by=by, now=now)


def _step(row: KeptFindings | None, before: Lines | None, lines: Lines) -> Step:
    old = before or {}
    return Step(
        kept=row,
        count=len(lines),
        came=tuple(one["words"] for key, one in lines.items() if key not in old),
        went=tuple(one["words"] for key, one in old.items() if key not in lines),
        is_first=before is None,
    )
