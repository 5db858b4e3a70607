"""What a browser may do with pages, what the log tells, and what is too much."""

import logging

import pytest
from django.conf import settings
from django.http import HttpResponse
from django.test import Client
from django.urls import reverse

from farm import headers
from farm.logs import WithoutKeys, without_keys
from farm.names import honest
from tests.records.typed import typed


def test_every_page_says_that_nothing_written_into_it_runs(owner_client, world):
    for client in (owner_client, Client()):
        for path in ("/", reverse("sign-in"), "/farms/nowhere/"):
            policy = client.get(path).headers["Content-Security-Policy"]
            assert "default-src 'none'" in policy
            assert "unsafe" not in policy
            assert "script-src 'self'" in policy


def test_pages_of_people_who_are_signed_in_are_kept_nowhere(owner_client, world):
    farm = reverse("farm", args=[world.farm.slug])
    assert "no-store" in owner_client.get(farm).headers["Cache-Control"]
    owner_client.post(reverse("sign-out"))
    assert owner_client.get(farm).status_code == 302


def test_a_paper_is_framed_by_nobody_and_its_viewer_left_alone(rf, world):
    def paper(request):
        return HttpResponse(b"%PDF-1.7", content_type="application/pdf")

    request = rf.get("/")
    request.user = world.owner
    told = headers.guarded(paper)(request).headers
    assert told["Content-Security-Policy"] == "frame-ancestors 'none'"
    assert "no-store" in told["Cache-Control"]


def test_the_policy_names_no_other_place():
    assert "http" not in headers.POLICY
    assert "*" not in headers.POLICY


def test_a_page_under_another_name_of_the_machine_is_refused(world):
    answer = Client().get("/sign-in/", headers={"host": "elsewhere.example"})
    assert answer.status_code == 400


def test_a_form_from_another_origin_is_refused(world):
    client = Client(enforce_csrf_checks=True)
    client.force_login(world.owner)
    client.get(reverse("farm-new"))
    token = client.cookies["csrftoken"].value
    sent = {"name": "X", "csrfmiddlewaretoken": token}
    origin = {"origin": "https://elsewhere.example"}
    answer = client.post(reverse("farm-new"), sent, headers=origin)
    assert answer.status_code == 403
    assert "open the page again" in answer.content.decode()


def test_a_form_of_a_tab_from_before_signing_in_says_to_open_it_again(world):
    client = Client(enforce_csrf_checks=True)
    client.force_login(world.owner)
    answer = client.post(reverse("farm-new"), {"name": "X"})
    assert answer.status_code == 403
    assert "Nothing was saved" in answer.content.decode()


def test_ten_megabytes_of_notes_are_refused_with_a_sentence(owner_client, world):
    url = reverse("records:new", args=[world.farm.slug, "fields"])
    before = world.farm.fields.count()
    sent = {**typed("fields", world.ours), "notes": "x" * 10 * 1024 * 1024}
    answer = owner_client.post(
        url,
        "&".join(f"{k}={v}" for k, v in sent.items()),
        content_type="application/x-www-form-urlencoded",
    )
    assert answer.status_code == 413
    assert "5 MB of text" in answer.content.decode()
    assert world.farm.fields.count() == before


def test_the_limits_of_what_is_sent_stand():
    assert settings.DATA_UPLOAD_MAX_MEMORY_SIZE <= 5 * 1024 * 1024
    assert settings.DATA_UPLOAD_MAX_NUMBER_FIELDS <= 5000
    assert settings.DATA_UPLOAD_MAX_NUMBER_FILES <= 20


@pytest.mark.parametrize(
    "path", ["/come-in/{}/", "/calendar/{}.ics", "/password/new/MQ/{}/"]
)
def test_no_key_of_an_address_reaches_the_log(path):
    secret = "s3cret-key_of-an-address"
    told = logging.LogRecord(
        "django.request", 30, "", 1, "Gone: %s", (path.format(secret),), None
    )
    assert WithoutKeys().filter(told)
    assert secret not in told.getMessage()
    assert secret not in without_keys(f'"GET {path.format(secret)}?x=1 HTTP/1.1" 404')


def test_every_line_of_the_log_passes_the_cover():
    handlers = settings.LOGGING["handlers"].values()
    writing = [one for one in handlers if "Null" not in one["class"]]
    assert all("without_keys" in one["filters"] for one in writing)


@pytest.mark.parametrize(
    ("typed", "kept"),
    [
        ("مزرعة النخيل", "مزرعة النخيل"),
        ("نیم‌فاصله", "نیم‌فاصله"),
        ("Field 👩‍🌾", "Field 👩‍🌾"),
        ("農場", "農場"),
        ("No\u200brth", "North"),
        ("Nor\u200dth\u200c", "North"),
        ("\u202egnp.exe\u202c", "gnp.exe"),
        ("\ufeffNorth\u2066", "North"),
        ("O’Brien & Sons <b>", "O’Brien & Sons <b>"),
    ],
)
def test_names_stay_as_typed_but_for_what_deceives(typed, kept):
    assert honest(typed) == kept


def test_a_field_cannot_look_like_another_by_marks_nobody_sees(owner_client, world):
    url = reverse("records:new", args=[world.farm.slug, "fields"])
    sent = {**typed("fields", world.ours), "name": "No\u200brth"}
    answer = owner_client.post(url, sent)
    assert "Another field has this name." in str(answer.context["form"].errors)
