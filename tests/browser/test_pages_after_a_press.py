"""Pages that are only an answer: after a press, at the door, from a file."""

import datetime as dt
from unittest import mock

import pytest
from django.conf import settings
from django.contrib.auth.tokens import default_token_generator
from django.core.files.uploadedfile import SimpleUploadedFile
from django.test import Client
from django.urls import reverse
from django.utils.encoding import force_bytes
from django.utils.http import urlsafe_base64_encode
from django_otp.plugins.otp_totp.models import TOTPDevice

from farm.models import Role, User
from reports.pdf import PdfUnavailableError
from tests.addresses import member_of
from tests.browser.conftest import visiting
from tests.factories import MembershipFactory

WORDS = "a stony field in May"
PAGES = {}


def page(template, status=200, *, signed_in=True):
    """An answer of this template, asked for by the owner or by a visitor."""

    def kept(asked):
        PAGES[template] = (asked, status, signed_in)
        return asked

    return kept


def at(name, cast, *told):
    return reverse(name, args=[cast.farm.slug, *told])


def with_second_step(client, cast):
    owner = User.objects.get(pk=cast.owner.pk)
    owner.set_password(WORDS)
    owner.save()
    TOTPDevice.objects.create(user=owner, confirmed=True)
    return owner


@page("farm/invited.html")
def _(client, cast):
    told = {"name": "Ana", "role": "crew", "language": "es"}
    return client.post(at("invite", cast), told)


@page("farm/password_link.html")
def _(client, cast):
    return client.post(at("member-password", cast, member_of(cast.ours).pk))


@page("farm/password_new.html", signed_in=False)
def _(client, cast):
    person = User.objects.get(pk=cast.crew.pk)
    told = [urlsafe_base64_encode(force_bytes(person.pk))]
    told.append(default_token_generator.make_token(person))
    return client.get(reverse("password-new", args=told), follow=True)


@page("farm/no_way_in.html", 404, signed_in=False)
def _(client, cast):
    return client.get(reverse("come-in", args=["forged"]))


@page("farm/locked.html", 429, signed_in=False)
def _(client, cast):
    told = {"username": "grower@example.org", "password": "wrong"}
    for _turn in range(settings.AXES_FAILURE_LIMIT):
        found = client.post(reverse("sign-in"), told)
    return found


@page("farm/sign_in_second.html", signed_in=False)
def _(client, cast):
    owner = with_second_step(client, cast)
    told = {"username": owner.email, "password": WORDS}
    return client.post(reverse("sign-in"), told, follow=True)


@page("farm/second_codes.html")
def _(client, cast):
    client.force_login(with_second_step(client, cast))
    return client.post(reverse("second"), {"password": WORDS, "do": "codes"})


@page("farm/opened.html")
def _(client, cast):
    period = {"sees_from": dt.date(2026, 1, 1), "sees_to": dt.date(2026, 12, 31)}
    long = {"since": dt.date(2020, 1, 1), "until": dt.date(2100, 1, 1)}
    told = {"user__name": "Philippa", "role": Role.INSPECTOR, **period, **long}
    client.force_login(MembershipFactory(farm=cast.farm, **told).user)
    return client.get(at("farm", cast))


@page("403_csrf.html", 403)
def _(client, cast):
    strict = Client(enforce_csrf_checks=True)
    strict.force_login(cast.owner)
    return strict.post(at("leave", cast))


@page("400.html", 413)
def _(client, cast):
    told = {"name": "x" * (settings.DATA_UPLOAD_MAX_MEMORY_SIZE + 1)}
    return client.post(at("invite", cast), told)


@page("reports/long_paper.html")
def _(client, cast):
    with mock.patch("reports.inspection.packet_views.is_long", return_value=True):
        return client.get(at("reports:packet-pdf", cast, 2026))


@page("reports/no_pdf.html", 503)
def _(client, cast):
    lacks = PdfUnavailableError("no library")
    with mock.patch("reports.ahead_views.print_paper", side_effect=lacks):
        return client.get(at("reports:week", cast))


@page("records/write_rows.html")
def _(client, cast):
    told = {"go": 1, "place": cast.ours["fields"].pk, "kind0": cast.ours.kind.pk}
    return client.get(at("records:write-act", cast, "sow"), told)


def weather(client, cast, rows):
    sent = {"file": SimpleUploadedFile("barn.csv", rows)}
    return client.post(at("records:weather-load", cast), sent)


@page("records/weather_columns.html")
def _(client, cast):
    return weather(client, cast, b"Date,Low,High,Rain\n2026-06-01,55,80,0.00\n")


@page("records/weather_preview.html")
def _(client, cast):
    return weather(client, cast, b"USC00000001,20260601,TMAX,267,,,7,\n")


@pytest.mark.parametrize("template", PAGES)
def test_a_page_that_is_an_answer_is_sound(judge, cast, template):
    asked, status, signed_in = PAGES[template]
    with visiting(cast.owner if signed_in else None) as client:
        found = asked(client, cast)
    assert found.status_code == status
    assert template in [one.name for one in found.templates]
    judge.window.sign_in(cast.owner if signed_in else None)
    assert judge.faults("/today/", found, name=template) == []
