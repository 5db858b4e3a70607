"""Compost: its heat and turnings, or else it counts as manure."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator
from dataclasses import replace

from reports.calc.rules.asked import puts_of
from reports.calc.rules.telling import of_put, put_values
from reports.calc.rules.waiting import waited
from reports.calc.shapes.books import Heap, Put
from reports.calc.shapes.dossier import Dossier
from reports.calc.shapes.rules import Found, Matter, Rule, Severity, Told

WINDROW = "windrow"


def compost(books: Dossier, rule: Rule) -> Iterator[Found]:
    """Hold each batch used, or made this season, against time, heat and turnings."""
    used = {heap.id: heap for heap, _ in _heaps_put(books)}
    made = {heap.id: heap for heap in books.heaps if heap.started_on in books.season}
    for heap in {**used, **made}.values():
        yield from heap_findings(heap, rule)
    for put in _of_no_batch(books):
        yield of_put(Matter.COMPOST_NO_BATCH, put, put_values(books, put))
    pair = Matter.COMPOST_ON_TOP, Matter.COMPOST_SOON
    for put in counted_raw(books, rule):
        for one in waited(books, rule, put, pair):
            yield replace(one, severity=Severity.STOP)


def counted_raw(books: Dossier, rule: Rule) -> tuple[Put, ...]:
    """Return the compost put on that counts as raw manure, for want of its heat."""
    used = {heap.id: heap for heap, _ in _heaps_put(books)}
    failed = {heap.id for heap in used.values() if any(heap_findings(heap, rule))}
    raw = (put for heap, put in _heaps_put(books) if heap.id in failed)
    return (*raw, *_of_no_batch(books))


def heap_findings(heap: Heap, rule: Rule) -> Iterator[Found]:
    """Say what a batch lacks of its days of heat, its turnings and its C:N."""
    at = ("compost-batches", heap.id, heap.started_on)
    hot = [
        (day, turned)
        for day, temp_c, turned in heap.days
        if temp_c is not None and rule["low_c"] <= temp_c <= rule["high_c"]
    ]
    if all(temp_c is None for _, temp_c, _ in heap.days):
        yield Found(Matter.COMPOST_NO_LOG, *at, values={"batch": heap.name})
        return
    turned = heap.method == WINDROW
    need = rule["days_turned" if turned else "days_still"]
    if len(hot) < need:
        told: Told = {"batch": heap.name, "days": len(hot), "need": round(need)}
        yield Found(Matter.COMPOST_DAYS, *at, values=told)
    turnings = _turnings(heap, [day for day, _ in hot])
    if turned and turnings < rule["turnings"]:
        asked = round(rule["turnings"])
        told = {"batch": heap.name, "turnings": turnings, "need": asked}
        yield Found(Matter.COMPOST_TURNINGS, *at, values=told)
    low, high = rule["ratio_low"], rule["ratio_high"]
    if heap.ratio is None or not low <= heap.ratio <= high:
        told = {"batch": heap.name, "low": low, "high": high}
        told["ratio"] = "?" if heap.ratio is None else heap.ratio
        yield Found(Matter.COMPOST_RATIO, *at, values=told)


def _turnings(heap: Heap, hot: list[dt.date]) -> int:
    """Turnings between the first and the last hot day."""
    if not hot:
        return 0
    return sum(
        turned and min(hot) <= day <= max(hot) for day, _temp_c, turned in heap.days
    )


def _of_no_batch(books: Dossier) -> Iterator[Put]:
    """What was put on this season with no batch behind it, and nobody's leave."""
    known = {put.id for _heap, put in _heaps_put(books)}
    for put in puts_of(books, "compost"):
        told = put.id in known or books.product[put.product_id].approval
        if put.on in books.season and not told:
            yield put


def _heaps_put(books: Dossier) -> Iterator[tuple[Heap, Put]]:
    """Each batch with where it was put, by its name as the product's lot."""
    named = {heap.name.casefold().strip(): heap for heap in books.heaps}
    for put in puts_of(books, "compost"):
        words = (put.product_lot, books.product[put.product_id].name)
        heap = next(
            (
                named[word.casefold().strip()]
                for word in words
                if word.casefold().strip() in named
            ),
            None,
        )
        if heap is not None:
            yield heap, put
