"""Two languages: nothing a person reads is left in one of them only."""

import gettext
import io
import re

import pytest
from django.apps import apps
from django.test import Client
from django.urls import reverse
from django.utils.functional import Promise

from farm.models import Record, User
from tests import strings

BLANK = re.compile(r"%\(\w+\)[sdif]|%[sdif%]|\{\w*\}")


def rows(storey):
    return [row for row in strings.kept(storey) if row.id]


def all_records():
    return [model for model in apps.get_models() if issubclass(model, Record)]


def forms(said):
    return list(said) if isinstance(said, (tuple, list)) else [said]


def test_every_string_is_said_in_spanish():
    silent = [
        f"{row.locations[0][0]}: {row.id}"
        for catalog in strings.renewed().values()
        for row in catalog
        if row.id and (not strings.whole(row) or row.fuzzy)
    ]
    assert len(silent) <= strings.PATIENCE, "\n".join(sorted(silent))


@pytest.mark.parametrize("storey", strings.STOREYS)
def test_what_is_filled_in_is_the_same_in_both_languages(storey):
    for row in filter(strings.whole, rows(storey)):
        blanks = [sorted(BLANK.findall(form)) for form in forms(row.id)]
        for form in forms(row.string):
            assert sorted(BLANK.findall(form)) in blanks, row.id


@pytest.mark.parametrize("storey", strings.STOREYS)
def test_what_the_program_reads_is_what_was_written(storey):
    compiled = strings.place(storey, "mo").read_bytes()
    assert compiled == strings.as_mo(strings.kept(storey))
    assert gettext.GNUTranslations(io.BytesIO(compiled)).info()["language"] == "es"


@pytest.mark.django_db
@pytest.mark.parametrize(
    ("wish", "language"),
    [
        ("es-MX,es;q=0.9", "es"),
        ("es-US", "es"),
        ("de", "en-us"),
        ("en-GB", "en-us"),
        ("", "en-us"),
        ("es;q=not a number", "en-us"),
        ("x" * 5000, "en-us"),
    ],
)
def test_a_stranger_is_answered_in_the_language_their_browser_asks_for(wish, language):
    page = Client().get(reverse("sign-in"), headers={"accept-language": wish})
    assert f'<html lang="{language}">' in page.content.decode()
    assert page.headers["Content-Language"] == language


@pytest.mark.django_db
def test_a_choice_at_the_foot_of_a_page_stays_with_the_browser_of_a_stranger():
    client, back = Client(), reverse("password-forgotten")
    chosen = {"language": "es", "next": back}
    assert client.post(reverse("language"), chosen).url == back
    assert '<html lang="es">' in client.get(back).content.decode()


def test_a_choice_goes_with_the_person_to_another_browser(world, as_person):
    as_person(world.crew).post(reverse("language"), {"language": "es", "next": "/"})
    assert User.objects.get(pk=world.crew.pk).language == "es"
    elsewhere = as_person(world.crew).get("/", headers={"accept-language": "en"})
    assert '<html lang="es">' in elsewhere.content.decode()


@pytest.mark.django_db
@pytest.mark.parametrize("away", ["https://elsewhere.example/", "//x.example", ""])
def test_no_choice_leads_to_another_place(away):
    chosen = {"language": "es", "next": away}
    assert Client().post(reverse("language"), chosen).url == "/"


@pytest.mark.django_db
def test_a_language_nobody_speaks_here_changes_nothing():
    client = Client()
    client.post(reverse("language"), {"language": "../../etc", "next": "/"})
    assert "language" not in client.cookies


@pytest.mark.parametrize("model", all_records(), ids=lambda model: model.__name__)
def test_what_a_record_holds_is_named_in_both_languages(model):
    kept = {field.name for field in Record._meta.get_fields()} | {"id", "farm"}
    for field in model._meta.concrete_fields:
        by_key = {"noun", "object_id"}
        if field.name not in kept | by_key:
            assert isinstance(field.verbose_name, Promise), field.name
    assert isinstance(model._meta.verbose_name, Promise)
    assert isinstance(model._meta.verbose_name_plural, Promise)
