"""A number of the certifier's own is told in words; only tables keep its key."""

import csv

import pytest
from django.urls import reverse

from farm.writing import write
from records.history import label_of
from reports.calc.shapes.basics import Span
from reports.ledger.register import season_register
from tests.factories import WRITTEN_AT, CertifierNumberFactory

KEY = "organic_us.manure.other_days"
WORDS = (
    "US organic, 7 CFR 205: Raw manure, from being worked in to harvest, "
    "days where it does not"
)


@pytest.fixture
def number(world):
    row = CertifierNumberFactory.build(
        farm=world.farm, key=KEY, value=100, low=60, high=400
    )
    return write(row, by=world.owner, now=WRITTEN_AT)


def page(client, name, *more):
    answer = client.get(reverse(f"records:{name}", args=["alder-hill", *more]))
    text = b"".join(answer) if answer.streaming else answer.content
    return text.decode()


@pytest.mark.django_db
def test_list_page_changes_and_form_say_the_number_in_words(number, owner_client):
    noun = "certifier-numbers"
    for name, more in (
        ("list", [noun]),
        ("page", [noun, number.pk]),
        ("changes", []),
        ("edit", [noun, number.pk]),
        ("void", [noun, number.pk]),
    ):
        text = page(owner_client, name, *more)
        assert WORDS in text
        assert KEY not in text.replace(f'value="{KEY}"', "")


@pytest.mark.django_db
def test_a_table_keeps_the_key_so_that_it_can_be_read_in_again(number, owner_client):
    text = page(owner_client, "table-csv", "certifier-numbers")
    told = [row["key"] for row in csv.DictReader(text.lstrip("\ufeff").splitlines())]
    assert KEY in told


@pytest.mark.django_db
def test_what_the_packet_lists_of_a_change_is_in_words_too(number, world):
    number.value = 120
    write(number, by=world.owner, now=WRITTEN_AT)
    (told,) = season_register(
        world.farm, Span(*world.farm.season(WRITTEN_AT.year))
    ).changes
    assert told.label == f"{WORDS}: 120"


@pytest.mark.django_db
def test_a_change_named_by_its_key_in_earlier_years_is_said_in_words(number, world):
    change = world.farm.changes.get(object_id=number.pk, noun="certifiernumber")
    change.label = f"{KEY}: 100"
    assert label_of(change) == f"{WORDS}: 100"
