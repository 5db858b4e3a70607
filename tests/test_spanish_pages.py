"""Every page as somebody reads it in Spanish: no English is left on it."""

import html
import re

import pytest
from django.apps import apps
from django.db import models

from farm.models import User
from tests import strings
from tests.addresses import addresses

SPOKEN = r'\b(?:alt|aria-label|placeholder|title|data-[a-z-]+)="([^"]*)"'
# Scripts and styles, and names a program reads: columns of tables, keys, commands.
UNSEEN = r"(?s)<script.*?</script>|<style.*?</style>|<!--.*?-->|<code.*?</code>"
ENGLISH = re.compile(r"\b(the|of|and|with|this|was|not|for|from|is)\b", re.IGNORECASE)
# The bibliography stays in the language it was printed in, as do headings of files.
AS_PRINTED = {"reports:sources", "reports:packet", "reports:season", "reports:rules"}
AS_PRINTED |= {"reports:assumptions", "records:kind", "records:load"}
# Pages of names that a program reads: columns, and keys of sources.
KEYS = {"records:load", "reports:sources"}
# Pages that are alike for every noun are read for one of them.
ALIKE = {"records:load", "records:attach", "records:void", "records:edit"}
ALIKE |= {"records:detach", "records:export", "records:load-save", "records:review"}


def pages():
    seen = set()
    for place in addresses():
        if "pdf" not in place.name and not (seen & ALIKE & {place.name}):
            yield place
        seen.add(place.name)


def texts(page):
    """What is seen and heard, piece by piece."""
    page = re.sub(UNSEEN, " ", page)
    pieces = [*re.split(r"<[^>]*>", page), *re.findall(SPOKEN, page)]
    return {html.unescape(" ".join(piece.split())) for piece in pieces}


def typed():
    """Words people typed, and names from the catalogue of kinds, longest first."""
    found = set()
    for model in apps.get_models():
        names = [
            field.name
            for field in model._meta.concrete_fields
            if isinstance(field, (models.CharField, models.TextField))
        ]
        for row in model.objects.values_list(*names) if names else []:
            found |= {str(word) for word in row if word and len(str(word)) > 2}
    return sorted(found, key=len, reverse=True)


@pytest.fixture(scope="module")
def english():
    """Whole sentences and words that are said otherwise in Spanish."""
    return {
        strings.singular(row.id)
        for storey in strings.STOREYS
        for row in strings.kept(storey)
        if row.id
        and not row.context
        and len(strings.singular(row.id)) > 3
        and strings.singular(row.string) != strings.singular(row.id)
    }


def test_no_page_in_spanish_holds_english(world, as_person, english):
    client = as_person(world.owner)
    User.objects.filter(pk=world.owner.pk).update(language="es")
    asked = [(place, place.at(world.ours)) for place in pages()]
    said, found, read = typed(), [], 0
    for place, url in asked:
        answer = client.get(url)
        if not answer.headers.get("Content-Type", "").startswith("text/html"):
            continue
        read += answer.status_code == 200
        for piece in texts(answer.content.decode()):
            own = piece
            for words in said:
                own = own.replace(words, " ")
            foreign = piece in english and own == piece and place.name not in KEYS
            foreign |= place.name not in AS_PRINTED and bool(ENGLISH.search(own))
            if foreign:
                found.append(f"{place}: {piece}")
    assert read > 100
    assert len(found) <= strings.PATIENCE, "\n".join(sorted(set(found)))
