"""How long lists take on a large farm: python -m tests.bench.lists.

Beside each list of a farm with a hundred thousand records stands the same list of a
farm with a few: it must ask the database as often. Milliseconds are the processor's.
"""

import argparse
import random
from functools import partial

from django.core.management import call_command
from django.test import Client
from django.test.utils import override_settings, setup_test_environment
from django.urls import reverse

from farm.models import Change
from records.nouns import NOUNS
from tests.bench.copies import Copier, note
from tests.bench.stopwatch import Stopwatch, queries_of
from tests.world import make_world

# What the hundred thousand are: many plantings, and much that leans on them.
FIELDS = 2000
MANY = {"plantings": 16_000, "observations": 24_000, "terminations": 12_000}
OTHERS = 2000
SMALL_PART = 0.001
LAST_PAGE = "?page=last"
WHOLE_FARM = ("records:changes", "records:today", "records:kinds", "reports:seasons")
PLAIN_FILES = {
    "default": {"BACKEND": "django.core.files.storage.FileSystemStorage"},
    "staticfiles": {"BACKEND": "django.contrib.staticfiles.storage.StaticFilesStorage"},
}


def main():
    asked = _asked()
    setup_test_environment()
    call_command("migrate", verbosity=0)
    world = make_world()
    rows = grow(world.ours, world.owner, asked.part)
    few = grow(world.theirs, world.stranger, SMALL_PART)
    print(f"{sum(rows.values()):,} records on {rows['fields']:,} fields, beside")
    print(f"{sum(few.values()):,} records on {few['fields']:,} fields\n")
    print(f"{'list':34}{'rows':>8}{'queries':>9}{'small':>8}{'ms':>8}{'small':>8}")
    with override_settings(STORAGES=PLAIN_FILES):
        grown = [_tell(name, world, rows, asked.laps) for name in _names()]
    print("\nlists that ask more often on the large farm:", sum(grown) or "none")


def _asked():
    parser = argparse.ArgumentParser(prog="python -m tests.bench.lists")
    parser.add_argument("--laps", type=int, default=5, help="the middle one counts")
    parser.add_argument(
        "--part", type=float, default=1.0, help="a part of the hundred thousand"
    )
    return parser.parse_args()


def grow(household, owner, part):
    """How many records of each noun a farm has after copying them."""
    copier = Copier(random.Random(1))
    counts = {}
    number = Change.objects.filter(farm=household.farm).count() + 1
    for noun, row in household.records.items():
        wanted = FIELDS if noun == "fields" else MANY.get(noun, OTHERS)
        made = copier.copy(row, int(wanted * part))
        note(household.farm, owner, made, number)
        number += len(made)
        counts[noun] = len(made)
    return counts


def _names():
    """Every noun's first page and last, and the lists that belong to no noun."""
    yield from ((noun.slug, "") for noun in NOUNS)
    yield from ((noun.slug, LAST_PAGE) for noun in NOUNS)
    yield from ((name, "") for name in WHOLE_FARM)


def _tell(name, world, rows, laps):
    noun, more = name
    large = _asked_for(noun, more, world.ours.farm, world.owner, laps)
    small = _asked_for(noun, more, world.theirs.farm, world.stranger, laps)
    print(
        f"{noun + more:34}{rows.get(noun, 0):8,}{large[0]:9}{small[0]:8}"
        f"{large[1]:8.1f}{small[1]:8.1f}{'  MORE' if large[0] > small[0] else ''}"
    )
    return large[0] > small[0]


def _asked_for(name, more, farm, person, laps):
    """Queries and milliseconds of one page."""
    client = Client()
    client.force_login(person)
    work = partial(client.get, _address(name, farm) + more)
    assert work().status_code == 200, name
    queries = queries_of(work)
    watch = Stopwatch()
    for _ in range(laps):
        watch.timed("page", work)()
    return queries, 1000 * watch["page"]


def _address(name, farm):
    if name in WHOLE_FARM:
        return reverse(name, args=[farm.slug])
    return reverse("records:list", args=[farm.slug, name])


if __name__ == "__main__":
    main()
