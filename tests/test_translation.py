"""Two languages: nothing a person reads is left in one of them only."""

import datetime as dt
import gettext
import io
import re

import pytest
from babel.dates import format_date
from babel.numbers import format_decimal
from django.apps import apps
from django.test import Client
from django.urls import reverse
from django.utils import formats, translation
from django.utils.functional import Promise

from farm import letters
from farm.forms.measures import AreaField, DepthField, LengthField
from farm.language import asked_in, spoken_for
from farm.models import Record, User
from farm.models.invitations import sealed
from farm.templatetags.days import day_said
from records.models import CalendarAddress
from tests import strings
from tests.factories import InvitationFactory

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


def test_a_letter_goes_out_in_the_language_of_who_receives_it(
    world, settings, mailoutbox
):
    settings.MAIL_IS_SET_UP = True
    made = InvitationFactory(
        farm=world.farm, email="tomas@example.org", language="es", made_by=world.owner
    )
    assert letters.invitation(made, "https://farm.example/come-in/x/")
    assert "le invita a" in mailoutbox[0].subject
    assert "Abra este enlace una sola vez" in mailoutbox[0].body
    User.objects.filter(pk=world.crew.pk).update(language="es")
    Client().post(reverse("password-forgotten"), {"email": world.crew.email})
    assert "contraseña nueva" in mailoutbox[1].body
    assert mailoutbox[1].subject == "Una contraseña nueva"


def test_whoever_comes_in_by_a_spanish_link_reads_spanish_and_keeps_it(world):
    sealed_as = sealed("a-token")
    InvitationFactory(
        farm=world.farm, token_hash=sealed_as, language="es", made_by=world.owner
    )
    client, at = Client(), reverse("come-in", args=["a-token"])
    page = client.get(at).content.decode()
    assert '<html lang="es">' in page
    typed = {"email": "new@example.org", "name": "Tomás", "language": "es"}
    client.post(at, {**typed, "password": "frijol y calabaza 7"})
    assert User.objects.get(email="new@example.org").language == "es"
    assert "Fincas" in client.get("/").content.decode()


def test_what_is_printed_behind_ones_back_is_in_the_language_it_was_asked_in(world):
    with translation.override("es"):
        query = asked_in("part=land")
    with spoken_for(query, world.owner):
        assert translation.get_language() == "es"
    world.owner.language = "es"
    with spoken_for("", world.owner):
        assert translation.get_language() == "es"


@pytest.mark.parametrize(
    ("typed", "square_metres"),
    [
        ("1.5 acres", 6070.2846336),
        ("1,200 pies²", 111.483648),
        ("0.6 hectáreas", 6000),
        ("30 x 4 pies", 11.1483648),
    ],
)
def test_measures_are_typed_in_spanish_with_a_point_for_decimals(typed, square_metres):
    with translation.override("es"):
        assert AreaField().clean(typed) == pytest.approx(square_metres)


@pytest.mark.parametrize(("form", "length"), [("j F Y", "long"), ("l, j F Y", "full")])
@pytest.mark.parametrize("day", [dt.date(2026, 7, 4), dt.date(2025, 12, 31)])
def test_days_are_written_as_the_common_locale_data_have_them(form, length, day):
    # Unicode CLDR, as Babel carries it, for Spanish of Mexico.
    with translation.override("es"):
        assert day_said(day, form) == format_date(day, length, locale="es_MX")


def test_numbers_are_written_as_in_the_united_states_and_mexico():
    with translation.override("es"):
        ours = formats.number_format(1234.5, 1, force_grouping=True)
    for place in ("es_MX", "es_US"):
        assert ours == format_decimal(1234.5, locale=place)


def test_what_a_box_shows_can_be_typed_into_it_in_spanish():
    with translation.override("es"):
        for field, si in ((LengthField(), 30.48), (DepthField(), 0.0127)):
            shown = field.prepare_value(si)
            assert field.clean(shown) == pytest.approx(si, rel=0.01)


def test_a_calendar_is_read_in_the_language_of_the_person_it_is_of(world):
    User.objects.filter(pk=world.crew.pk).update(language="es")
    now = dt.datetime(2026, 7, 1, tzinfo=dt.UTC)
    token = CalendarAddress.renewed(world.farm, world.crew, now=now)
    feed = Client().get(reverse("calendar-feed", args=[token])).content.decode()
    assert "X-WR-CALNAME:Tareas en" in feed
