"""From the story to the tables, evening by evening, all or nothing."""

from __future__ import annotations

import datetime as dt
import json
from collections import Counter
from collections.abc import Callable
from functools import partial
from pathlib import Path
from zoneinfo import ZoneInfo

from django.db import transaction

from farm.models import Farm, Membership, Role, User
from farm.writing import review, void, write
from records.models import Kind
from records.reading.demo import plain, skies
from records.reading.demo.book import Book
from records.reading.demo.diary import Entry, Line, entries
from records.reading.demo.nouns import SHEETS
from records.reading.demo.plain import Told
from records.reading.demo.sheet import ASIDE, fill

Act = Callable[[dt.datetime], None]

EVENING = dt.time(18)
# Days of a person's stay that the story may tell.
DAYS = ("until", "sees_from", "sees_to")


def read(path: Path) -> Told:
    story: Told = json.loads(path.read_text(encoding="utf-8"))
    return story


def layered(story: Told, *more: Told) -> Told:
    """A story with the nouns of further files written on after its own."""
    whole = dict(story)
    for layer in more:
        for noun, rows in layer.items():
            if noun in SHEETS:
                whole[noun] = [*whole.get(noun, ()), *rows]
    return whole


def load(story: Told, *, owner: User, weather: Path) -> Farm:
    """Write the whole story down as if it had been written day by day."""
    farm, _lines = load_lines(story, owner=owner, weather=weather)
    return farm


def load_lines(
    story: Told, *, owner: User, weather: Path
) -> tuple[Farm, tuple[Line, ...]]:
    """Write the story down, and hand back each of its lines with its row."""
    diary = entries(story)
    with transaction.atomic():
        farm = found(story["farm"], owner, story["since"])
        people = {"owner": owner, **hired(story["people"], farm)}
        kinds = {kind.slug: kind for kind in Kind.objects.filter(farm=None)}
        book = Book(farm, people, kinds)
        acts = [*readings(story["station"], weather, book), *writings(diary, book)]
        written: Counter[dt.date] = Counter()
        for day, act in sorted(acts, key=lambda one: one[0]):
            act(evening(farm, day) + dt.timedelta(minutes=written[day]))
            written[day] += 1
    return farm, tuple({id(one.line): one.line for one in diary}.values())


def found(told: Told, owner: User, since: str) -> Farm:
    farm = Farm(**told)
    farm.full_clean()
    farm.save()
    Membership.objects.create(
        farm=farm, user=owner, role=Role.OWNER, since=plain.day(since)
    )
    return farm


def hired(people: list[Told], farm: Farm) -> dict[str, User]:
    """The people of the story, by first name; none of them can sign in."""
    found = {}
    for told in people:
        user = User.objects.filter(email=told["email"]).first()
        found[told["short"]] = user or User.objects.create_user(
            told["email"], name=told["name"]
        )
        Membership.objects.create(
            farm=farm,
            user=found[told["short"]],
            role=told["role"],
            since=plain.day(told["since"]),
            **{name: plain.day(told[name]) for name in DAYS if name in told},
        )
    return found


def readings(told: Told, weather: Path, book: Book) -> list[tuple[dt.date, Act]]:
    row = skies.station(told, book)
    return [
        (day, partial(skies.take, row, days, told, book))
        for day, days in skies.batches(told, weather)
    ]


def writings(diary: list[Entry], book: Book) -> list[tuple[dt.date, Act]]:
    return [(entry.day, partial(settle, entry, book)) for entry in diary]


def settle(entry: Entry, book: Book, now: dt.datetime) -> None:
    by = book.people[entry.by]
    row = entry.line.row
    if row is None:
        write_down(entry.line, book, by=by, now=now)
    elif entry.act == "voided":
        void(row, by=by, now=now, reason=entry.line.told["voided"]["why"])
    elif entry.act == "reviewed":
        review(row, by=by, now=now)
    else:
        mend(entry.line, book, by=by, now=now)


def write_down(line: Line, book: Book, *, by: User, now: dt.datetime) -> None:
    sheet = SHEETS[line.noun]
    done_by = line.told.get("done_by", line.by)
    row = sheet.model(
        farm=book.farm, done_by=named(done_by, book), written_by=by, written_at=now
    )
    if line.within:
        # What hangs below hangs on a planting.
        row.planting = line.within.row  # type: ignore[attr-defined]
    parts = fill(row, line.told, sheet, book)
    row.full_clean()
    line.row = write(row, by=by, now=now, parts=parts)
    book.keep(line.row, line.told)


def named(short: str, book: Book) -> str:
    """Who did the work: somebody of the farm, a stranger by name, or nobody."""
    return str(book.people.get(short, short))


def mend(line: Line, book: Book, *, by: User, now: dt.datetime) -> None:
    assert line.row is not None
    mended = line.told["mended"]
    told = {word: value for word, value in mended.items() if word not in ASIDE}
    parts = fill(line.row, told, SHEETS[line.noun], book)
    line.row.full_clean()
    write(line.row, by=by, now=now, parts=parts if "seed" in told else None)


def evening(farm: Farm, day: dt.date) -> dt.datetime:
    return dt.datetime.combine(day, EVENING, ZoneInfo(farm.time_zone))
