"""Signing in: throttled, in two steps, listed and ended; and passwords set anew."""

import datetime as dt
import re

import pytest
from django.core import mail
from django.test import Client
from django.urls import reverse
from django_otp.oath import TOTP
from django_otp.plugins.otp_totp.models import TOTPDevice

from farm import second_step
from farm.models import RecoveryCode, SignIn, User

WORDS = "a stony field in May"
TYPED = {"username": "grower@example.org", "password": WORDS}
# RFC 6238, appendix B: the seed of its tests, and the code at 59 s in six figures.
RFC_SEED, RFC_AT, RFC_CODE = b"12345678901234567890", 59, 287082


@pytest.fixture
def grower(db):
    return User.objects.create_user("grower@example.org", WORDS, name="Grower")


@pytest.fixture
def signed_in(grower):
    client = Client(headers={"user-agent": "Field telephone"})
    client.post(reverse("sign-in"), TYPED)
    return client


@pytest.fixture
def device(grower):
    return TOTPDevice.objects.create(user=grower, name="telephone", confirmed=True)


def code_of(device):
    return f"{TOTP(device.bin_key).token():06d}"


def test_codes_are_those_of_the_standard():
    totp = TOTP(RFC_SEED)
    totp.time = RFC_AT
    assert totp.token() == RFC_CODE


def test_wrong_passwords_are_throttled_kindly_and_for_one_name_only(grower, settings):
    client = Client()
    for turn in range(settings.AXES_FAILURE_LIMIT):
        name = ("grower@example.org", "Grower@Example.org ")[turn % 2]
        answer = client.post(reverse("sign-in"), {"username": name, "password": "x"})
    assert answer.status_code == 429
    assert "a quarter of an hour" in answer.content.decode()
    right = client.post(reverse("sign-in"), TYPED)
    assert right.status_code == 429
    User.objects.create_user("other@example.org", WORDS)
    other = {**TYPED, "username": "other@example.org"}
    assert client.post(reverse("sign-in"), other).status_code == 302


def test_a_second_step_is_set_up_and_its_codes_are_kept_as_digests(signed_in, grower):
    page = signed_in.get(reverse("second")).content.decode()
    assert "<svg" in page
    device = TOTPDevice.objects.get()
    wrong = signed_in.post(reverse("second"), {"code": "000000x"})
    assert wrong.context["form"].errors["code"]
    TOTPDevice.objects.update(throttling_failure_count=0)
    page = signed_in.post(reverse("second"), {"code": code_of(device)}).content.decode()
    codes = re.findall(r"<code>([\w-]{19})</code>", page)
    assert len(set(codes)) == second_step.CODES
    kept = str(RecoveryCode.objects.values())
    assert not any(code.replace("-", "") in kept for code in codes)
    assert codes[0] not in signed_in.get(reverse("second")).content.decode()


def test_the_password_alone_does_not_sign_in_where_a_code_is_asked(grower, device):
    client = Client()
    answer = client.post(reverse("sign-in") + "?next=/farms/new/", TYPED)
    assert answer.url == reverse("sign-in-second")
    assert client.get("/").status_code == 302
    wrong = client.post(answer.url, {"code": "12"})
    assert wrong.context["form"].errors["code"]
    TOTPDevice.objects.update(throttling_failure_count=0)
    assert client.post(answer.url, {"code": code_of(device)}).url == "/farms/new/"
    assert client.get("/").status_code == 200


def test_a_code_opens_once_and_guessing_is_slowed(grower, device):
    now = code_of(device)
    assert second_step.verify(grower, now) == ""
    assert second_step.verify(grower, now)
    assert "Wait" in second_step.verify(grower, now)


def test_a_recovery_code_opens_once(grower, device):
    codes = second_step.new_codes(grower)
    assert second_step.verify(grower, codes[0].upper()) == ""
    assert second_step.verify(grower, codes[0])
    assert grower.recovery_codes.count() == second_step.CODES - 1


def test_the_second_step_waits_ten_minutes_only(grower, device, rf):
    request = rf.get("/")
    request.session = Client().session
    now = dt.datetime(2026, 6, 1, tzinfo=dt.UTC)
    second_step.wait(request, grower, "", now=now)
    late = now + second_step.PATIENCE + dt.timedelta(seconds=1)
    assert second_step.waiting(request, now=now) == grower
    assert second_step.waiting(request, now=late) is None


def test_the_second_step_is_taken_away_with_the_password_only(
    signed_in, grower, device
):
    answer = signed_in.post(reverse("second"), {"password": "wrong"})
    assert answer.context["form"].errors["password"]
    assert second_step.device_of(grower)
    signed_in.post(reverse("second"), {"password": WORDS, "do": "off"})
    assert second_step.device_of(grower) is None


def test_sign_ins_are_listed_and_ended(signed_in, grower):
    other = Client(headers={"user-agent": "Lost telephone"})
    other.post(reverse("sign-in"), TYPED)
    page = signed_in.get(reverse("sign-ins")).content.decode()
    assert "Lost telephone" in page
    assert other.session.session_key not in page
    row = SignIn.objects.get(pk=other.session.session_key)
    signed_in.post(reverse("sign-ins"), {"end": row.mark})
    assert other.get("/").status_code == 302
    assert signed_in.get("/").status_code == 200


def test_a_new_password_ends_the_visits_elsewhere(signed_in):
    other = Client()
    other.post(reverse("sign-in"), TYPED)
    new = "the hay is in by July"
    sent = {"old_password": WORDS, "new_password1": new, "new_password2": new}
    signed_in.post(reverse("password"), sent)
    assert other.get("/").status_code == 302
    assert signed_in.get("/").status_code == 200
    assert SignIn.objects.exclude(user=None).count() == 1


@pytest.mark.parametrize(
    ("agent", "words"),
    [
        # In the shape browsers send: product, machine in brackets, engine.
        (
            "Mozilla/5.0 (X11; Linux x86_64; rv:42.0) Gecko/20100101 Firefox/42.0",
            "Firefox · Linux",
        ),
        (
            "Mozilla/5.0 (X11; Linux x86_64) AppleWebKit/537.36 (KHTML, like Gecko) "
            "Chrome/51.0.2704.103 Safari/537.36",
            "Chrome · Linux",
        ),
        (
            "Mozilla/5.0 (iPhone; CPU iPhone OS 13_5_1 like Mac OS X) AppleWebKit/605"
            ".1.15 (KHTML, like Gecko) Version/13.1.1 Mobile/15E148 Safari/604.1",
            "Safari · iPhone",
        ),
        ("Field telephone", "Field telephone"),
        ("", ""),
    ],
)
def test_a_browser_is_told_in_words(agent, words):
    assert SignIn(browser=agent).words == words


def test_nobody_ends_the_sign_in_of_another_person(signed_in, world, as_person):
    row = SignIn.objects.get(user__email="grower@example.org")
    as_person(world.owner).post(reverse("sign-ins"), {"end": row.mark})
    as_person(world.owner).post(reverse("sign-ins"), {"end": "others"})
    assert SignIn.objects.filter(pk=row.pk).exists()


def test_a_forgotten_password_is_set_by_a_letter_and_ends_every_visit(
    signed_in, settings
):
    settings.MAIL_IS_SET_UP = True
    client = Client()
    client.post(reverse("password-forgotten"), {"email": "grower@example.org"})
    (link,) = re.findall(r"http://testserver(\S+)", mail.outbox[0].body)
    form = client.get(link, follow=True).redirect_chain[-1][0]
    new = "the hay is in by July"
    client.post(form, {"new_password1": new, "new_password2": new})
    assert signed_in.get("/").status_code == 302
    again = client.post(reverse("sign-in"), {**TYPED, "password": new})
    assert again.url == "/"
    assert "has been used" in Client().get(link, follow=True).content.decode()


def test_a_letter_is_promised_alike_for_known_and_unknown_addresses(grower, settings):
    settings.MAIL_IS_SET_UP = True
    asked = [
        Client().post(reverse("password-forgotten"), {"email": email}).url
        for email in ("grower@example.org", "nobody@example.org")
    ]
    assert asked[0] == asked[1]
    assert len(mail.outbox) == 1


def test_without_e_mail_the_page_says_whom_to_ask(grower):
    answer = Client().post(reverse("password-forgotten"), {"email": grower.email})
    assert "Ask the owner of your farm" in answer.content.decode()
    assert mail.outbox == []
