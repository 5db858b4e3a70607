"""Every noun goes out as a table and comes in again."""

import csv
import graphlib
import io

import pytest
from django.db import transaction

from records.nouns import BY_MODEL, BY_SLUG, NOUNS
from records.tables import tables_of
from records.tables.columns import AUTHORSHIP
from tests.factories import (
    FarmFactory,
    KindFactory,
    MembershipFactory,
)
from tests.records.tables.papers import (
    counts,
    faults,
    load,
    odd_farm,
    out,
)
from tests.world import make_world


def without_authors(files):
    """The tables as lists of rows, but for who wrote them and when."""
    told = {}
    for name, (_file, data) in files.items():
        rows = list(csv.DictReader(io.StringIO(data.decode(), newline="")))
        told[name] = [
            {key: row[key] for key in row if key not in AUTHORSHIP} for row in rows
        ]
    return told


def bare_farm(people, kinds):
    """A farm with its people and its kinds, and not one record."""
    farm = FarmFactory(name="Alder Hill", slug="alder-hill")
    for email, role in people:
        MembershipFactory(farm=farm, user__email=email, role=role)
    for slug, name in kinds:
        KindFactory(farm=farm, slug=slug, name=name)
    return farm, farm.memberships.get(role="owner").user


def nouns_in_order():
    """Those first that others name in any of their tables."""
    named = {
        noun.slug: {
            BY_MODEL[column.to._meta.model_name].slug
            for table in tables_of(noun)
            for column in table.columns
            if column.to and column.to._meta.model_name in BY_MODEL
        }
        - {noun.slug}
        for noun in NOUNS
    }
    return [BY_SLUG[slug] for slug in graphlib.TopologicalSorter(named).static_order()]


@pytest.mark.django_db
@pytest.mark.parametrize("how", ["csv", "xlsx"])
def test_every_noun_goes_out_and_comes_in_again_without_loss(how):
    with transaction.atomic():
        world = make_world()
        farm = odd_farm(world)
        people = list(farm.memberships.values_list("user__email", "role"))
        kinds = list(farm.kinds.values_list("slug", "name"))
        files = {noun.slug: out(farm, noun, how) for noun in NOUNS}
        told = {noun.slug: without_authors(out(farm, noun)) for noun in NOUNS}
        transaction.set_rollback(True)
    farm, owner = bare_farm(people, kinds)
    bad = []
    for noun in nouns_in_order():
        tried = load(farm, noun, files[noun.slug], by=owner)
        bad += faults(tried)
    assert bad == []
    for noun in NOUNS:
        assert without_authors(out(farm, noun)) == told[noun.slug]
    for noun in NOUNS:
        again = load(farm, noun, files[noun.slug], by=owner)
        assert counts(again) == (0, 0, len(again.sheet.rows))
